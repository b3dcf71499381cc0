using System.Diagnostics;
using System.Reflection;
using System.Text;
using Shaftwright.App.Tests.Drawings;

namespace Shaftwright.App.Tests.Verbs;

/// <summary>What a command left behind.</summary>
internal sealed record Ran(int Code, string Out, string Error);

/// <summary>Runs the real program, as a shell would.</summary>
internal static class Shell
{
    private static readonly string s_program = typeof(Shell)
        .Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
        .Single(a => a.Key == "Shaftwright.App")
        .Value!;

    /// <summary>Runs a command in the repository's folder.</summary>
    public static async Task<Ran> Run(string[] args, string input = "")
    {
        var start = new ProcessStartInfo("dotnet")
        {
            WorkingDirectory = Samples.Repository,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardInputEncoding = new UTF8Encoding(false),
            StandardOutputEncoding = Encoding.UTF8,
            StandardErrorEncoding = Encoding.UTF8,
        };
        start.ArgumentList.Add(s_program);
        foreach (var arg in args)
            start.ArgumentList.Add(arg);
        using var process = Process.Start(start)!;
        var (output, error) = (
            process.StandardOutput.ReadToEndAsync(),
            process.StandardError.ReadToEndAsync()
        );
        try
        {
            await process.StandardInput.WriteAsync(input);
            process.StandardInput.Close();
        }
        catch (IOException)
        {
            // It did not want to hear it all.
        }
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        return new(process.ExitCode, Lines(await output), Lines(await error));
    }

    private static string Lines(string text) =>
        text.Replace("\r\n", "\n", StringComparison.Ordinal);
}
