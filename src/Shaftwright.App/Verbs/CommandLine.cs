using System.CommandLine;
using System.CommandLine.Help;
using System.Globalization;
using Shaftwright.Length;
using Shaftwright.Measures;

namespace Shaftwright.App.Verbs;

/// <summary>The verbs, their options, and the one place where a failure becomes an exit code.</summary>
internal static class CommandLine
{
    private static readonly Argument<string> s_job = new("JOB")
    {
        Description = "A job file (*.swjob.json), or - to read it from standard input.",
    };

    private static readonly Option<bool> s_json = new("--json")
    {
        Description = "Write the result as JSON, in mm, N·mm, MPa and rad.",
    };

    /// <summary>Runs one command.</summary>
    /// <param name="args">The words after the program's name.</param>
    /// <param name="streams">Where it reads and writes.</param>
    /// <returns>The exit code.</returns>
    public static async Task<int> RunAsync(string[] args, Streams streams)
    {
        try
        {
            var parsed = Root(streams).Parse(args);
            if (parsed.Errors.Count > 0)
                throw new BadInputException(
                    string.Join('\n', parsed.Errors.Select(e => e.Message))
                        + "\nSee: shaftwright --help"
                );
            return await parsed.InvokeAsync(
                new InvocationConfiguration
                {
                    Output = streams.Out,
                    Error = streams.Error,
                    EnableDefaultExceptionHandler = false,
                }
            );
        }
        catch (BadInputException e)
        {
            await streams.Error.WriteLineAsync(e.Message);
        }
        catch (OperationCanceledException)
        {
            await streams.Error.WriteLineAsync("Stopped before it was done.");
        }
#pragma warning disable CA1031 // Last resort: every way this can fail ends as code 2 with words, never as a stack trace.
        catch (Exception e)
#pragma warning restore CA1031
        {
            await streams.Error.WriteLineAsync(
                $"Shaftwright failed, and that is a fault of its own: {e.GetType().Name}: {e.Message}"
            );
        }
        return Exit.BadInput;
    }

    private static Command Root(Streams streams)
    {
        var root = new Command(
            "shaftwright",
            "One-off driveshafts from two donor shafts: length, cut, strength, weld, route card."
        )
        {
            Serve(streams),
            New(streams),
            Schema(streams),
            Length(streams),
            Shelf(streams),
            Share(streams),
            Stage(CutVerb.Verb, streams),
            Stage(StrengthVerb.Verb, streams),
            Stage(WeldVerb.Verb, streams),
            Stage(TruingVerb.Verb, streams),
            CrackTest(streams),
            Sheet(streams),
            Draw(streams),
        };
        root.Options.Add(new HelpOption());
        root.Options.Add(new VersionOption());
        return root;
    }

    private static Command Stage(StageVerb verb, Streams streams)
    {
        var units = Units();
        var command = new Command(verb.Name, verb.Description) { s_job, s_json, units };
        command.SetAction(parsed =>
            verb.Run(
                JobSource.Read(parsed.GetRequiredValue(s_job), streams),
                DisplayOf(parsed.GetValue(units)),
                parsed.GetValue(s_json),
                streams
            )
        );
        return command;
    }

    private static Command Shelf(Streams streams)
    {
        var units = Units();
        var from = new Option<string>("--from")
        {
            Description =
                "A table of shafts, or a job file that holds a shelf; the job's own shelf when not given.",
            HelpName = "FILE",
        };
        var command = new Command(ShelfVerb.Verb.Name, ShelfVerb.Verb.Description)
        {
            s_job,
            from,
            s_json,
            units,
        };
        command.SetAction(parsed =>
        {
            var document = JobSource.Read(parsed.GetRequiredValue(s_job), streams);
            if (parsed.GetValue(from) is { } file)
                document = ShelfVerb.With(document, file, streams);
            return ShelfVerb.Verb.Run(
                document,
                DisplayOf(parsed.GetValue(units)),
                parsed.GetValue(s_json),
                streams
            );
        });
        return command;
    }

    private static Command Length(Streams streams)
    {
        var units = Units();
        var cars = new Option<long>("--cars")
        {
            Description =
                "Judge the length on N cars drawn within the doubt of everything measured.",
            HelpName = "N",
        };
        cars.Validators.Add(said =>
        {
            if (said.GetValueOrDefault<long>() is < 0 or > LengthCars.MostCars)
                said.AddError($"--cars takes a number from 0 to {LengthCars.MostCars}.");
        });
        var seed = new Option<ulong>("--seed")
        {
            Description = "Seed of the draw: the same seed draws the same cars.",
            HelpName = "S",
            DefaultValueFactory = _ => 1,
        };
        var command = new Command("length", LengthVerb.Description)
        {
            s_job,
            s_json,
            units,
            cars,
            seed,
        };
        command.SetAction(
            (parsed, cancel) =>
                Task.FromResult(
                    LengthVerb
                        .With(parsed.GetValue(cars), parsed.GetValue(seed), cancel)
                        .Run(
                            JobSource.Read(parsed.GetRequiredValue(s_job), streams),
                            DisplayOf(parsed.GetValue(units)),
                            parsed.GetValue(s_json),
                            streams
                        )
                )
        );
        return command;
    }

    private static Command Share(Streams streams)
    {
        var units = Units();
        var jobs = new Argument<string[]>("JOBS")
        {
            Description = "Job files, one for each side.",
            Arity = ArgumentArity.OneOrMore,
        };
        var from = new Option<string>("--from")
        {
            Description =
                "A table of shafts, or a job file that holds a shelf; the first job's own shelf when not given.",
            HelpName = "FILE",
        };
        var spares = new Option<int>("--spares")
        {
            Description = "How many spares of each, from 0 to 4.",
            HelpName = "N",
        };
        spares.Validators.Add(said =>
        {
            if (said.GetValueOrDefault<int>() is < 0 or > 4)
                said.AddError("--spares takes a number from 0 to 4.");
        });
        var command = new Command(ShareVerb.Name, ShareVerb.Description)
        {
            jobs,
            from,
            spares,
            s_json,
            units,
        };
        command.SetAction(parsed =>
        {
            var documents = parsed
                .GetRequiredValue(jobs)
                .Select(path => JobSource.Read(path, streams))
                .ToList();
            if (parsed.GetValue(from) is { } file)
                documents[0] = ShelfVerb.With(documents[0], file, streams);
            return ShareVerb
                .Of(documents, parsed.GetValue(spares))
                .Run(
                    documents[0],
                    DisplayOf(parsed.GetValue(units)),
                    parsed.GetValue(s_json),
                    streams
                );
        });
        return command;
    }

    private static Command CrackTest(Streams streams)
    {
        var units = Units();
        var at = new Option<DateTimeOffset?>("--at")
        {
            Description =
                "The instant to answer for, such as 2026-05-03T16:20:00+02:00; now when not given.",
            HelpName = "INSTANT",
            CustomParser = said =>
            {
                // With its offset: a time without one means another instant on every machine.
                string[] forms = ["yyyy-MM-dd'T'HH:mm:sszzz", "yyyy-MM-dd'T'HH:mm:ss'Z'"];
                if (
                    DateTimeOffset.TryParseExact(
                        said.Tokens[0].Value,
                        forms,
                        CultureInfo.InvariantCulture,
                        DateTimeStyles.AssumeUniversal,
                        out var instant
                    )
                )
                    return instant;
                said.AddError(
                    $"“{said.Tokens[0].Value}” is no instant. Write it as 2026-05-03T16:20:00+02:00 or 2026-05-03T14:20:00Z."
                );
                return null;
            },
        };
        var command = new Command("cracktest", CrackTestVerb.Description)
        {
            s_job,
            at,
            s_json,
            units,
        };
        command.SetAction(parsed =>
        {
            var document = JobSource.Read(parsed.GetRequiredValue(s_job), streams);
            return CrackTestVerb
                .At(parsed.GetValue(at) ?? DateTimeOffset.Now, document)
                .Run(document, DisplayOf(parsed.GetValue(units)), parsed.GetValue(s_json), streams);
        });
        return command;
    }

    private static Command Sheet(Streams streams)
    {
        var units = Units();
        var file = OutFile("Write the HTML to this file instead of standard output.");
        var command = new Command(
            "sheet",
            "The route card to print: HTML that needs nothing beside it."
        )
        {
            s_job,
            file,
            units,
        };
        command.SetAction(parsed =>
            SheetVerb.Run(
                JobSource.Read(parsed.GetRequiredValue(s_job), streams),
                DisplayOf(parsed.GetValue(units)),
                parsed.GetValue(file),
                streams
            )
        );
        return command;
    }

    private static Command Draw(Streams streams)
    {
        var part = new Option<string>("--part")
        {
            Description = "What to draw: shaft, sleeve, jig, or all of them.",
            DefaultValueFactory = _ => "all",
        };
        part.AcceptOnlyFromAmong(DrawVerb.Parts);
        var paper = new Option<string>("--paper")
        {
            Description = "A4 or A3, lying.",
            DefaultValueFactory = _ => "A4",
        };
        paper.AcceptOnlyFromAmong(DrawVerb.Papers);
        var file = OutFile("Write to this file: .pdf, .dxf, .svg, or .stl for the jig.");
        file.Required = true;
        var command = new Command("draw", DrawVerb.Description) { s_job, part, paper, file };
        command.SetAction(parsed =>
            DrawVerb.Run(
                JobSource.Read(parsed.GetRequiredValue(s_job), streams),
                parsed.GetValue(part)!,
                parsed.GetValue(paper)!,
                parsed.GetRequiredValue(file),
                streams
            )
        );
        return command;
    }

    private static Command Serve(Streams streams)
    {
        var port = PortOption("--port", "Port on this machine; 0 takes any free one.");
        port.DefaultValueFactory = _ => ServeOptions.UsualPort;
        var data = new Option<string>("--data")
        {
            Description = "Folder of the job book; your own, or the demo's, when not given.",
            HelpName = "DIR",
        };
        var demo = new Option<bool>("--demo") { Description = "Serve the demo jobs." };
        var open = new Option<bool>("--open") { Description = "Open the page in the browser." };
        var lan = new Option<string?>("--lan")
        {
            Description =
                "Serve paired phones in this network too, encrypted; at ADDRESS only when one is given.",
            HelpName = "ADDRESS",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var lanPort = PortOption(
            "--lan-port",
            "Port for phones; the one after --port when not given."
        );
        var plain = new Option<bool>("--plain")
        {
            Description =
                "With --lan: also without encryption, on the port after. Others in the network can read along.",
        };
        var indicator = new Option<string>("--indicator")
        {
            Description =
                "Read a digital indicator's lines from this device (docs/indicator-feed.md).",
            HelpName = "PATH",
        };
        var command = new Command(
            "serve",
            "The pages and the job book, for this machine, and for paired phones when asked."
        )
        {
            port,
            data,
            demo,
            indicator,
            open,
            lan,
            lanPort,
            plain,
        };
        command.SetAction(
            (parsed, cancel) =>
                ServeVerb.RunAsync(
                    new ServeOptions
                    {
                        Port = parsed.GetValue(port) ?? ServeOptions.UsualPort,
                        Data = parsed.GetValue(data),
                        Demo = parsed.GetValue(demo),
                        Indicator = parsed.GetValue(indicator),
                        Open = parsed.GetValue(open),
                        Lan = parsed.GetResult(lan) is not null,
                        LanAddress = parsed.GetValue(lan),
                        LanPort = parsed.GetValue(lanPort),
                        Plain = parsed.GetValue(plain),
                        Out = streams.Out,
                        Error = streams.Error,
                    },
                    cancel
                )
        );
        return command;
    }

    private static Option<int?> PortOption(string name, string description) =>
        new(name)
        {
            Description = description,
            HelpName = "N",
            CustomParser = said =>
            {
                if (
                    int.TryParse(
                        said.Tokens[0].Value,
                        NumberStyles.None,
                        CultureInfo.InvariantCulture,
                        out var number
                    )
                    && number <= 65535
                )
                    return number;
                said.AddError(
                    $"“{said.Tokens[0].Value}” is no port. A port is a number from 0 to 65535."
                );
                return null;
            },
        };

    private static Command New(Streams streams)
    {
        var name = new Option<string>("--name") { Description = "What the job is called." };
        var file = OutFile("Write the job to this file and list what to fill in.");
        var command = new Command("new", "A starter job: valid, with nothing measured yet.")
        {
            name,
            file,
        };
        command.SetAction(parsed =>
            NewVerb.Run(parsed.GetValue(name) ?? "", parsed.GetValue(file), streams)
        );
        return command;
    }

    private static Command Schema(Streams streams)
    {
        var command = new Command("schema", "The JSON Schema of a job file.");
        command.SetAction(_ => SchemaVerb.Run(streams));
        return command;
    }

    private static Option<string> Units()
    {
        var units = new Option<string>("--units")
        {
            Description = "Units of the words: mm or inch.",
            DefaultValueFactory = _ => "mm",
        };
        units.AcceptOnlyFromAmong("mm", "inch");
        return units;
    }

    private static Option<string> OutFile(string description) =>
        new("--out") { Description = description, HelpName = "FILE" };

    private static Display DisplayOf(string? units) =>
        units == "inch" ? Display.Inch : Display.Metric;
}
