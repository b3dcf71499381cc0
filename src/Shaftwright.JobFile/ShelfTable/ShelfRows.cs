using Shaftwright.Donors;
using Shaftwright.Joints;
using Shaftwright.Measures;

namespace Shaftwright.JobFile.ShelfTable;

/// <summary>The rows of one shaft, gathered.</summary>
internal sealed class ShelfRows(string id)
{
    private static readonly (string, ZoneKind)[] s_kinds =
    [
        ("plain", ZoneKind.Plain),
        ("taper", ZoneKind.Taper),
        ("spline", ZoneKind.Spline),
        ("groove", ZoneKind.Groove),
        ("boot seat", ZoneKind.BootSeat),
        ("step", ZoneKind.Step),
        ("sensor ring", ZoneKind.SensorRing),
        ("damper", ZoneKind.Damper),
    ];

    private static readonly (string, SeatKind)[] s_seats =
    [
        ("shoulder", SeatKind.Shoulder),
        ("clip", SeatKind.Clip),
        ("end stop", SeatKind.EndStop),
    ];

    private readonly List<ShaftZone> _zones = [];
    private readonly List<HardenedZone> _hardened = [];
    private readonly List<Bore> _bores = [];
    private readonly List<GoneStretch> _gone = [];
    private ShelfDonor _donor = new() { Id = id };
    private DonorShaft _shaft = new();
    private bool _spoilt;
    private double _until;

    public string Id => id;

    /// <summary>Leaves the shaft out.</summary>
    public void Spoil() => _spoilt = true;

    public void Add(RowCells cells)
    {
        Shaft(cells);
        switch (cells.Text("what").ToLowerInvariant())
        {
            case "":
                break;
            case "hardened":
                _hardened.Add(
                    new()
                    {
                        From = cells.Measure("from", DonorFields.From),
                        To = cells.Measure("until", DonorFields.To),
                        CaseDepth = cells.Measure("case", DonorFields.CaseDepth),
                    }
                );
                break;
            case "hollow":
                _bores.Add(
                    new()
                    {
                        From = cells.Measure("from", DonorFields.BoreFrom),
                        To = cells.Measure("until", DonorFields.BoreTo),
                        Diameter = cells.Measure("diameter", DonorFields.BoreDiameter),
                    }
                );
                break;
            case "used":
            case "damaged":
                _gone.Add(
                    new()
                    {
                        Why = cells.Word(
                            "what",
                            GoneWhy.Used,
                            [("used", GoneWhy.Used), ("damaged", GoneWhy.Damaged)]
                        ),
                        From = cells.Measure("from", ShelfFields.GoneFrom),
                        To = cells.Measure("until", ShelfFields.GoneTo),
                        Note = cells.Text("note"),
                    }
                );
                break;
            default:
                Zone(cells);
                break;
        }
        _spoilt |= cells.Refused;
    }

    /// <summary>The shaft; null when a row of it was refused, or when its numbers are out of range or order.</summary>
    public ShelfDonor? Whole(List<Refusal> log)
    {
        if (_spoilt)
            return null;
        var donor = _donor with
        {
            Shaft = _shaft with { Zones = _zones, Hardened = _hardened, Bores = _bores },
            Gone = _gone,
        };
        var check = new InputCheck();
        donor.Check(check, $"shaft {id}");
        log.AddRange(check.Refusals);
        var faults = ProfileFaults.Of(donor.Shaft);
        foreach (var fault in check.Refusals.Count == 0 ? faults : [])
            log.Add(
                new(
                    $"shaft {id}",
                    fault.ToString(),
                    "cannot be",
                    "numbers of one and the same shaft"
                )
            );
        return check.Refusals.Count + faults.Count == 0 ? donor : null;
    }

    private void Zone(RowCells cells)
    {
        var kind = cells.Word(
            "what",
            ZoneKind.Plain,
            [
                .. s_kinds,
                // Named so that a refusal lists them; they are read above.
                ("hardened", ZoneKind.Plain),
                ("hollow", ZoneKind.Plain),
                ("used", ZoneKind.Plain),
                ("damaged", ZoneKind.Plain),
            ]
        );
        var until = cells.Measure("until", DonorFields.Until);
        if (until is null && !cells.Refused)
            cells.Refuse("until", "is empty", DonorFields.Until.Range());
        if (
            cells.Measure("from", DonorFields.From) is { } from
            && Math.Abs(from.Value - _until) > 0.05
        )
            cells.Refuse(
                "from",
                from.Value > _until ? "leaves a gap" : "overlaps the stretch above it",
                $"{Say.Length(_until)}, where the stretch above ends, or nothing"
            );
        if (until?.Value <= _until)
            cells.Refuse(
                "until",
                "does not lie beyond the stretch above it",
                $"more than {Say.Length(_until)}"
            );
        _until = until?.Value ?? _until;
        _zones.Add(
            new()
            {
                Kind = kind,
                Until = until,
                Diameter = cells.Measure("diameter", DonorFields.Diameter),
                EndDiameter = cells.Measure("end diameter", DonorFields.EndDiameter),
                RootDiameter = cells.Measure("root", DonorFields.RootDiameter),
                Fillet = cells.Measure("fillet", DonorFields.Fillet),
                Teeth = cells.Count("teeth", 120),
                Module = cells.Measure("module", DonorFields.Module),
                PressureAngle = cells.Measure("pressure angle", DonorFields.PressureAngle),
                RunOut = cells.Measure("run-out", DonorFields.RunOut),
            }
        );
    }

    /// <summary>What is said of the whole shaft; it may stand in any of its rows, and a later one counts.</summary>
    private void Shaft(RowCells cells)
    {
        if (cells.Text("name") is { Length: > 0 } name)
            _shaft = _shaft with { Name = name };
        if (cells.Text("place") is { Length: > 0 } place)
            _donor = _donor with { Place = place };
        _donor = _donor with
        {
            Condition = cells.Word(
                "condition",
                _donor.Condition,
                [
                    ("sound", DonorCondition.Sound),
                    ("bent", DonorCondition.Bent),
                    ("scrap", DonorCondition.Scrap),
                ]
            ),
            Side = cells.Word("side", _donor.Side, [("left", Side.Left), ("right", Side.Right)]),
            Carried = cells.Measure("carried", ShelfFields.Carried) ?? _donor.Carried,
            WalkedEnd = End(cells, "walked", _donor.WalkedEnd),
            FarEnd = End(cells, "far", _donor.FarEnd),
        };
        _shaft = _shaft with
        {
            Steel = cells.Word(
                "steel",
                _shaft.Steel,
                [
                    ("unknown", SteelClass.Unknown),
                    ("medium carbon", SteelClass.MediumCarbon),
                    ("quenched and tempered alloy", SteelClass.QuenchedTemperedAlloy),
                ]
            ),
            FileTest = cells.Word(
                "file",
                _shaft.FileTest,
                [("bites", FileTest.Bites), ("skates", FileTest.Skates)]
            ),
            CoreHardness = cells.Measure("core", DonorFields.CoreHardness) ?? _shaft.CoreHardness,
            SurfaceHardness =
                cells.Measure("surface", DonorFields.SurfaceHardness) ?? _shaft.SurfaceHardness,
        };
    }

    /// <summary>An end: the names of the joints it fits with a stroke between them, "?" for one nobody has tried, "none" for
    /// an end that takes no joint.</summary>
    private static DonorEnd? End(RowCells cells, string which, DonorEnd? before)
    {
        var fits = cells.Text(which + " end");
        if (string.Equals(fits, "none", StringComparison.OrdinalIgnoreCase))
            return null;
        var seat = cells.Word(which + " seat", before?.Seat ?? SeatKind.Unknown, s_seats);
        var beyond = cells.Measure(which + " beyond", ShelfFields.SeatToEnd) ?? before?.SeatToEnd;
        if (fits.Length == 0 && before is null && seat == SeatKind.Unknown && beyond is null)
            return null;
        return new()
        {
            Fits =
                fits.Length == 0 ? before?.Fits ?? []
                : fits == "?" ? []
                :
                [
                    .. fits.Split(
                        '/',
                        StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries
                    ),
                ],
            Seat = seat,
            SeatToEnd = beyond,
        };
    }
}
