using BenchmarkDotNet.Running;

// One class a stage; each has a baseline written with a general-purpose library, in the same run.
BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
