using Shaftwright.JobFile;

namespace Shaftwright.App.Verbs;

/// <summary><c>schema</c>: the JSON Schema of a job file.</summary>
internal static class SchemaVerb
{
    public static int Run(Streams streams)
    {
        streams.Out.Write(JobJson.Schema());
        return Exit.Fine;
    }
}
