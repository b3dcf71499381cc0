using Shaftwright.Drawings.Shop;
using Shaftwright.JobFile;

namespace Shaftwright.App.Verbs;

/// <summary><c>draw</c>: works drawings to a file: the pieces and the shaft, the sleeve, the alignment jig.</summary>
internal static class DrawVerb
{
    public const string Description =
        "Works drawings: the pieces to cut and the shaft, the sleeve, the alignment jig.";

    public static string[] Parts { get; } = ["shaft", "sleeve", "jig", "all"];

    public static string[] Papers { get; } = ["A4", "A3"];

    /// <summary>Writes a drawing; its kind follows from the file's name.</summary>
    /// <exception cref="BadInputException">The job has nothing to draw, or the file cannot be written.</exception>
    public static int Run(
        JobDocument document,
        string part,
        string paper,
        string path,
        Streams streams
    )
    {
        var result = Workflow.Evaluate(document.Job, DateTimeOffset.Now);
        var sheet = paper == "A3" ? Paper.A3 : Paper.A4;
        List<ShopSheet> sheets = [.. Sheets(result, part, sheet).OfType<ShopSheet>()];
        var kind = Path.GetExtension(path).ToLowerInvariant();
        if (kind == ".stl")
        {
            if (part is not ("jig" or "all") || result.Jig is not { } jig)
                throw new BadInputException(
                    "Only the jig is written as STL, and it needs a cut with both diameters known."
                );
            JobSource.Write(path, StlWriter.Write(jig), overwrite: true);
            streams.Out.WriteLine($"{path}: the alignment jig, as a solid in mm.");
            return Exit.Fine;
        }
        if (sheets.Count == 0)
            throw new BadInputException(
                part == "sleeve"
                    ? "There is no sleeve to draw: the job needs a cut, a sleeve length and its outside diameter."
                    : "There is nothing to draw yet: the job needs two donors and a cut."
            );
        switch (kind)
        {
            case ".pdf":
                JobSource.Write(path, PdfWriter.Write(sheets));
                break;
            case ".dxf":
                JobSource.Write(path, DxfWriter.Write(One(sheets)), overwrite: true);
                break;
            case ".svg":
                JobSource.Write(path, ShopSvg.Write(One(sheets)), overwrite: true);
                break;
            default:
                throw new BadInputException(
                    $"\"{path}\" ends in none of .pdf, .dxf, .svg and .stl, so nobody knows what to write."
                );
        }
        foreach (var s in sheets)
            streams.Out.WriteLine(
                $"{path}: {s.Title}, {(kind == ".dxf" ? "in true size" : $"scale 1:{Math.Round(1 / s.Scale)} on {s.Paper.Name}")}."
            );
        return Exit.Fine;
    }

    private static IEnumerable<ShopSheet?> Sheets(JobResult result, string part, Paper paper)
    {
        if (part is "shaft" or "all")
            yield return ShaftSheet.Of(result, paper);
        if (part is "sleeve" or "all")
            yield return SleeveSheet.Of(result, paper);
        if (part is "jig" or "all")
            yield return JigSheet.Of(result, paper);
    }

    private static ShopSheet One(List<ShopSheet> sheets) =>
        sheets.Count == 1
            ? sheets[0]
            : throw new BadInputException(
                "Such a file holds one drawing: say which with --part shaft, sleeve or jig."
            );
}
