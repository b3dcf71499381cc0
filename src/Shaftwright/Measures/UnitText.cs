namespace Shaftwright.Measures;

/// <summary>Finds the unit that a spelling means.</summary>
internal static class UnitText
{
    /// <summary>Finds it; null when found. Case counts only where a spelling is ambiguous by it (mPa).</summary>
    /// <param name="text">As typed after the number, trimmed.</param>
    /// <param name="unit">The unit, or null.</param>
    public static Refused? Find<T>(string text, out Unit? unit)
        where T : IDimension<T>
    {
        unit = null;
        var word = text.EndsWith('.') ? text[..^1] : text;
        var product = WithoutSigns(word);
        foreach (var pair in T.Ambiguities)
        {
            var same = pair.Spelling.Any(char.IsUpper)
                ? string.Equals(product, pair.Spelling, StringComparison.Ordinal)
                : string.Equals(product, pair.Spelling, StringComparison.OrdinalIgnoreCase);
            if (same)
                return new(
                    $"has a unit that can be read two ways, \"{text}\"",
                    $"{pair.First}, or {pair.Second}; write which"
                );
        }
        if (word.Length > 0 && !IsSign(word[0]) && !IsSign(word[^1]))
            unit = T.Units.FirstOrDefault(u =>
                IsProduct(u) ? Means(u, product, WithoutSigns(u.Symbol)) : Means(u, word, u.Symbol)
            );
        return unit is null ? new($"is not {Article(T.Word)} {T.Word} (unit \"{text}\")") : null;
    }

    private static string Article(string word) => "aeiou".Contains(word[0]) ? "an" : "a";

    private static bool Means(Unit unit, string typed, string symbol) =>
        string.Equals(typed, symbol, StringComparison.OrdinalIgnoreCase)
        || unit.Spellings.Contains(typed, StringComparer.OrdinalIgnoreCase);

    /// <summary>Only a product may be written apart: N m is a newton metre, m m is a slip.</summary>
    private static bool IsProduct(Unit unit) => unit.Symbol.Contains('·', StringComparison.Ordinal);

    /// <summary>N·m, N.m, N m, N*m, N-m and Nm are one.</summary>
    private static string WithoutSigns(string text) => string.Concat(text.Where(c => !IsSign(c)));

    private static bool IsSign(char c) => c is '·' or '⋅' or '.' or '*' or '-' or '×' or ' ';
}
