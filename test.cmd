@echo off
rem Builds and runs all tests. Set SHAFTWRIGHT_CHROMIUM to a Chromium or Chrome executable first.
cd /d "%~dp0"
dotnet tool restore || exit /b 1
dotnet csharpier check . || exit /b 1
dotnet build -c Release -v quiet || exit /b 1
for %%p in (Shaftwright.Tests Shaftwright.Records.Tests Shaftwright.App.Tests) do dotnet run --no-build -c Release --project tests/%%p || exit /b 1
