using Shaftwright.Measures;

namespace Shaftwright.Pages.Doors;

/// <summary>What was typed behind one door, word for word, with a way back. It holds text, not values: a slip that a field
/// refuses is kept as well, so that it can be put right after the phone has slept.</summary>
public sealed class Draft
{
    private Dictionary<string, string> _answers = [];
    private Dictionary<string, string> _loaded = [];
    private readonly Stack<(string Key, Dictionary<string, string> Before)> _undo = new();

    /// <summary>Raised after each change.</summary>
    public event Action? Changed;

    /// <summary>Raised just before a new change begins.</summary>
    public event Action? Begins;

    /// <summary>The text under a key; empty when nothing was typed.</summary>
    public string this[string key] => _answers.GetValueOrDefault(key, "");

    /// <summary>True when there is something to take back.</summary>
    public bool CanUndo => _undo.Count > 0;

    /// <summary>True when nothing was typed.</summary>
    public bool IsEmpty => _answers.Count == 0;

    /// <summary>True when something was typed under the key.</summary>
    public bool Has(string key) => _answers.ContainsKey(key);

    /// <summary>Sets one answer; empty text takes it out. Keys typed one after another into one box are one change.</summary>
    public void Set(string key, string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (this[key] == text)
            return;
        Begin(key);
        Put(_answers, key, text);
        _open = true;
        Changed?.Invoke();
    }

    /// <summary>Several answers as one change.</summary>
    public void SetAll(string change, IEnumerable<KeyValuePair<string, string>> answers)
    {
        ArgumentNullException.ThrowIfNull(answers);
        Begin(change, always: true);
        foreach (var (key, text) in answers)
            Put(_answers, key, text);
        _open = true;
        Changed?.Invoke();
        Settle();
    }

    /// <summary>Takes the last change back. What a field refused does not come back with it: a job kept what stood before the
    /// slip, and box and job would say two things.</summary>
    public void Undo()
    {
        while (_undo.TryPop(out var last))
        {
            var before = WithoutSlips(last.Before);
            if (before.Count == _answers.Count && !before.Except(_answers).Any())
                continue;
            Begins?.Invoke();
            Replace(before);
            _open = true;
            Changed?.Invoke();
            Settle();
            return;
        }
    }

    private Dictionary<string, string> WithoutSlips(Dictionary<string, string> before)
    {
        var put = new Dictionary<string, string>(before);
        foreach (var key in before.Keys)
        {
            if (Whole(before, key) == Whole(_answers, key) || !IsSlip(before, key))
                continue;
            var good = _undo.Select(u => u.Before).FirstOrDefault(b => !IsSlip(b, key)) ?? _loaded;
            Put(put, key, good.GetValueOrDefault(key, ""));
            Put(put, key + PlusMinus, good.GetValueOrDefault(key + PlusMinus, ""));
        }
        return put;
    }

    private bool IsSlip(Dictionary<string, string> answers, string key) =>
        _refused.ContainsKey((key, Whole(answers, key)));

    private static string Whole(Dictionary<string, string> answers, string key) =>
        Units.Together(
            answers.GetValueOrDefault(key, ""),
            answers.GetValueOrDefault(key + PlusMinus, "")
        );

    /// <summary>Raised when the hand has left what it changed.</summary>
    public event Action? Settled;

    /// <summary>Ends the running change: the next key begins a new one.</summary>
    public void Settle()
    {
        _settled = true;
        if (!_open)
            return;
        _open = false;
        Settled?.Invoke();
    }

    /// <summary>Keys with a prefix, in no order.</summary>
    public IEnumerable<string> Keys(string prefix) =>
        _answers.Keys.Where(k => k.StartsWith(prefix, StringComparison.Ordinal));

    /// <summary>Reads one answer; null when there is none, or when its field refuses it.</summary>
    public Measured<T>? Take<T>(string key, Field<T> field)
        where T : IDimension<T> =>
        Read(key, field) is not { } reading ? null
        : reading.Measure is { } measure ? measure
        : _instead is { } instead && instead.TryGetValue(key, out var text)
            ? field
                .Read(Units.Together(text, instead.GetValueOrDefault(key + PlusMinus, "")))
                .Measure
        : null;

    /// <summary>One answer over what the job holds there. What was not changed stays the job's own, letter for letter. What a
    /// field refuses takes nothing out of the job for good, and counts as nothing on the screen meanwhile.</summary>
    public Measured<T>? Take<T>(string key, Field<T> field, Measured<T>? held)
        where T : IDimension<T>
    {
        if (held is null)
            return Take(key, field);
        var (value, give) = Units.Apart(held.Typed, held.Unit);
        return Units.Together(this[key], this[key + PlusMinus]) == Units.Together(value, give)
            ? held
            : Take(key, field);
    }

    /// <summary>Reads one answer with its ±, or the refusal; null when nothing was typed.</summary>
    public Reading<T>? Read<T>(string key, Field<T> field)
        where T : IDimension<T>
    {
        ArgumentNullException.ThrowIfNull(field);
        if (this[key].Length == 0)
            return null;
        var text = Units.Together(this[key], this[key + PlusMinus]);
        var reading = field.Read(text);
        if (reading.Refusal is { } refusal)
            _refused[(key, text)] = refusal;
        return reading;
    }

    /// <summary>Why the field that read an answer refused what stands there; null when it did not.</summary>
    public Refusal? WhyNot(string key) =>
        _refused.GetValueOrDefault((key, Units.Together(this[key], this[key + PlusMinus])));

    /// <summary>Key suffix of the ± of an answer.</summary>
    public const string PlusMinus = "/±";

    /// <summary>Puts a measure of a job back as it was typed.</summary>
    public static void Lay<T>(IDictionary<string, string> into, string key, Measured<T>? measure)
        where T : IDimension<T>
    {
        ArgumentNullException.ThrowIfNull(into);
        if (measure is null)
            return;
        (into[key], var give) = Units.Apart(measure.Typed, measure.Unit);
        if (give.Length > 0)
            into[key + PlusMinus] = give;
    }

    /// <summary>Starts from other answers, without a way back.</summary>
    /// <param name="answers">The answers.</param>
    /// <param name="held">What the job under them says, which undo goes back to where a slip was kept over it.</param>
    public void Load(
        IReadOnlyDictionary<string, string> answers,
        IReadOnlyDictionary<string, string> held
    )
    {
        _loaded = new(held);
        Replace(answers);
        _undo.Clear();
        Changed?.Invoke();
    }

    /// <summary>Takes over one answer that was changed elsewhere. There is no way back to what it was here before: undo takes
    /// back only what was typed here.</summary>
    public void Follow(string key, string text)
    {
        Put(_answers, key, text);
        Put(_loaded, key, text);
        foreach (var (_, before) in _undo)
            Put(before, key, text);
    }

    /// <summary>Does something as if these were the answers; nobody is told.</summary>
    /// <param name="answers">The answers.</param>
    /// <param name="work">What to do.</param>
    /// <param name="instead">What counts where a field refuses what was typed: a slip waits in the draft until it is put right
    /// and takes nothing out of the job meanwhile.</param>
    public T With<T>(
        IReadOnlyDictionary<string, string> answers,
        Func<T> work,
        IReadOnlyDictionary<string, string>? instead = null
    )
    {
        ArgumentNullException.ThrowIfNull(work);
        var mine = _answers;
        _instead = instead;
        _answers = [];
        foreach (var (key, text) in answers)
            Put(_answers, key, text);
        try
        {
            return work();
        }
        finally
        {
            _answers = mine;
            _instead = null;
        }
    }

    /// <summary>A copy of the answers.</summary>
    public Dictionary<string, string> Copy() => new(_answers);

    /// <summary>True between a key typed and the hand leaving its box.</summary>
    public bool IsOpen => _open;

    /// <summary>What the running change is of, until the hand has left it; null when none runs.</summary>
    public string? Running => _open && _undo.TryPeek(out var last) ? last.Key : null;

    private IReadOnlyDictionary<string, string>? _instead;

    // Every text that a field has refused here, under its key.
    private readonly Dictionary<(string Key, string Text), Refusal> _refused = [];
    private bool _settled = true;
    private bool _open;

    private void Begin(string key, bool always = false)
    {
        if (!always && !_settled && _undo.TryPeek(out var last) && last.Key == key)
            return;
        _settled = always;
        _undo.Push((key, new(_answers)));
        Begins?.Invoke();
    }

    private static void Put(Dictionary<string, string> answers, string key, string text)
    {
        if (text.Length == 0)
            answers.Remove(key);
        else
            answers[key] = text;
    }

    private void Replace(IReadOnlyDictionary<string, string> answers)
    {
        var copy = answers.ToArray();
        _answers.Clear();
        foreach (var (key, text) in copy)
            Put(_answers, key, text);
        _settled = true;
    }
}
