namespace Shaftwright.JobFile;

/// <summary>How a field is named: as a JSON Pointer in edits, with dots and brackets in refusals.</summary>
/// <remarks>Source: RFC 6901, sections 3 and 4: tokens after "/", "~1" for "/", "~0" for "~".</remarks>
public static class FieldPath
{
    /// <summary>The tokens of a pointer, unescaped; null when it is not one or has more than <paramref name="most"/>.</summary>
    /// <param name="path">The pointer; not the empty one, which has no tokens.</param>
    /// <param name="most">Most tokens.</param>
    public static string[]? Tokens(string path, int most)
    {
        ArgumentNullException.ThrowIfNull(path);
        if (path.Length is 0 or > 500 || path[0] != '/')
            return null;
        var tokens = path[1..].Split('/');
        if (tokens.Length > most)
            return null;
        for (var i = 0; i < tokens.Length; i++)
        {
            var tilde = tokens[i].IndexOf('~');
            for (; tilde >= 0; tilde = tokens[i].IndexOf('~', tilde + 1))
            {
                if (tilde + 1 >= tokens[i].Length || tokens[i][tilde + 1] is not ('0' or '1'))
                    return null;
            }
            // In this order, so that ~01 becomes ~1 and not /.
            tokens[i] = tokens[i]
                .Replace("~1", "/", StringComparison.Ordinal)
                .Replace("~0", "~", StringComparison.Ordinal);
        }
        return tokens;
    }

    /// <summary>The pointer to a field named as refusals name it: <c>corner.readings[2].in</c> becomes <c>/corner/readings/2/in</c>.</summary>
    /// <param name="field">The path of a field of this program's own format, whose names hold no dots or brackets.</param>
    public static string ToEditPath(string field)
    {
        ArgumentNullException.ThrowIfNull(field);
        return field.Length == 0
            ? ""
            : "/"
                + field
                    .Replace("].", "/", StringComparison.Ordinal)
                    .Replace("]", "", StringComparison.Ordinal)
                    .Replace('[', '/')
                    .Replace('.', '/');
    }
}
