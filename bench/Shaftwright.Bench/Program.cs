using BenchmarkDotNet.Running;
using Shaftwright.Bench;

// One class a stage; each has a baseline written with a general-purpose library, in the same run.
if (args is ["positions"])
    PositionRun.Go();
else if (args is ["field"])
    FieldRun.Go();
else if (args is ["shelf"])
    ShelfRun.Go();
else
    BenchmarkSwitcher.FromAssembly(typeof(LinkageBench).Assembly).Run(args);
