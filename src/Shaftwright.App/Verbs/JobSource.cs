using Shaftwright.JobFile;

namespace Shaftwright.App.Verbs;

/// <summary>Reads the job that a verb is about, or says why it cannot be had.</summary>
internal static class JobSource
{
    /// <summary>Reads a job.</summary>
    /// <param name="path">Its path, or <c>-</c> for standard input.</param>
    /// <param name="streams">Where standard input is.</param>
    /// <exception cref="BadInputException">There is no such file, it cannot be opened, or it was refused.</exception>
    public static JobDocument Read(string path, Streams streams)
    {
        var (text, name) =
            path == "-" ? (streams.In.ReadToEnd(), "standard input") : (Open(path), path);
        var reading = JobJson.Read(text);
        return reading.Document
            ?? throw new BadInputException(
                $"{name} was not taken:\n"
                    + string.Join('\n', reading.Refusals.Select(r => "  " + r))
            );
    }

    /// <summary>The text of a file.</summary>
    /// <exception cref="BadInputException">There is no such file, or it cannot be opened.</exception>
    public static string Open(string path)
    {
        try
        {
            return File.ReadAllText(path);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new BadInputException(
                $"There is no file \"{path}\". Give the path of a job, or - to read it from standard input."
            );
        }
        catch (Exception e)
            when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            throw new BadInputException($"\"{path}\" cannot be read: {e.Message}");
        }
    }

    /// <summary>Writes a file of bytes that a verb makes; one that is there is replaced.</summary>
    /// <exception cref="BadInputException">It cannot be written.</exception>
    public static void Write(string path, byte[] bytes)
    {
        try
        {
            File.WriteAllBytes(path, bytes);
        }
        catch (Exception e)
            when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            throw new BadInputException($"\"{path}\" cannot be written: {e.Message}");
        }
    }

    /// <summary>Writes a file that a verb makes.</summary>
    /// <param name="path">Its path.</param>
    /// <param name="text">Its text.</param>
    /// <param name="overwrite">Whether a file that is there may be replaced.</param>
    /// <exception cref="BadInputException">It cannot be written, or is there and must not be replaced.</exception>
    public static void Write(string path, string text, bool overwrite)
    {
        try
        {
            using var file = new FileStream(
                path,
                overwrite ? FileMode.Create : FileMode.CreateNew,
                FileAccess.Write
            );
            using var writer = new StreamWriter(file);
            writer.Write(text);
        }
        catch (IOException) when (!overwrite && File.Exists(path))
        {
            throw new BadInputException(
                $"\"{path}\" is there already and is not overwritten. Choose another name."
            );
        }
        catch (Exception e)
            when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            throw new BadInputException($"\"{path}\" cannot be written: {e.Message}");
        }
    }
}
