@echo off
rem Builds Shaftwright and serves the demo on this machine only. Extra words go to `serve`.
cd /d "%~dp0"
where dotnet >nul 2>nul || (echo Shaftwright needs the .NET 10 SDK: https://dot.net & exit /b 2)
dotnet run -c Release --project src/Shaftwright.App -- serve --demo --open %*
