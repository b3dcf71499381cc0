namespace Shaftwright.Pages.Doors;

// What was typed here and refused. An answer goes without it, and must not look as if nothing had been typed.
public abstract partial class DoorPage
{
    /// <summary>What stands refused behind this door, in the order of its questions. What is being typed at this moment is not
    /// among it while its box is on the screen: half a number is no slip.</summary>
    public IReadOnlyList<Slip> Slips
    {
        get
        {
            // Evaluating reads every box: only then has each field said what it refuses.
            _ = Result;
            var running = Answering || Draft.Running is not { } key ? null : ValueOf(key);
            return
            [
                .. Draft
                    .Copy()
                    .Keys.Select(ValueOf)
                    .Distinct()
                    .Where(k => k != running && Bears(k))
                    .Select(SlipOf)
                    .OfType<Slip>()
                    .OrderBy(s => StepOf(s.Where)),
            ];
        }
    }

    /// <summary>The answer to be put right on the screen that is come to; null for none.</summary>
    public string? Wanted { get; private set; }

    /// <summary>Goes back to the box of what was refused.</summary>
    public async Task PutRight(Slip slip)
    {
        ArgumentNullException.ThrowIfNull(slip);
        Draft.Settle();
        if (StepOf(slip.Where) == Index)
        {
            await Device.FocusOn(BoxOf(slip.Key));
            return;
        }
        Wanted = slip.Key;
        Navigation.NavigateTo(slip.Where);
    }

    /// <summary>True where the answer reads what stands under a key; false for what is typed beside it, to be noted.</summary>
    protected virtual bool Bears(string key) => true;

    private Slip? SlipOf(string key)
    {
        if (WhyNot(key, _taken) is not { Length: > 0 } why)
            return null;
        var typed = _typed.GetValueOrDefault(key) ?? _typed.GetValueOrDefault(GiveOf(key));
        return new(
            key,
            Called(key),
            Whole(Draft.Copy(), key),
            why,
            typed is { Where.Length: > 0 } ? typed.Where : Address(0),
            Whole(_taken, key)
        );
    }

    private int StepOf(string where)
    {
        var at = Enumerable.Range(0, Steps.Count + 1).Where(i => Address(i) == where);
        return at.DefaultIfEmpty(0).First();
    }

    private static string BoxOf(string key) => "q-" + key.Replace('/', '-');
}
