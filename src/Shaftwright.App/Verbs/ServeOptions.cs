namespace Shaftwright.App.Verbs;

/// <summary>What <c>serve</c> was asked.</summary>
public sealed record ServeOptions
{
    /// <summary>The port when none is given.</summary>
    public const int UsualPort = 5178;

    /// <summary>Port on this machine; 0 takes any free one.</summary>
    public int Port { get; init; } = UsualPort;

    /// <summary>Folder of the job book; null for the user's own (the demo has another).</summary>
    public string? Data { get; init; }

    /// <summary>Serve the demo jobs.</summary>
    public bool Demo { get; init; }

    /// <summary>Device that a digital indicator sends its readings to; null for none.</summary>
    public string? Indicator { get; init; }

    /// <summary>Open the page in the desktop's browser, where there is one.</summary>
    public bool Open { get; init; }

    /// <summary>Serve phones in the garage network too.</summary>
    public bool Lan { get; init; }

    /// <summary>The one address of this machine to serve phones at; null for every private one.</summary>
    public string? LanAddress { get; init; }

    /// <summary>Port for phones; null for the one after <see cref="Port"/>, or any free one when that is 0.</summary>
    public int? LanPort { get; init; }

    /// <summary>Serve phones without encryption too, on the port after <see cref="LanPort"/>.</summary>
    public bool Plain { get; init; }

    /// <summary>Where the address is written.</summary>
    public TextWriter Out { get; init; } = Console.Out;

    /// <summary>Where it is written why nothing is served.</summary>
    public TextWriter Error { get; init; } = Console.Error;

    /// <summary>The folder of the job book; null when the system names no folder for the user.</summary>
    public string? DataFolder()
    {
        if (Data is not null)
            return Path.GetFullPath(Data);
        var own = Environment.GetFolderPath(
            Environment.SpecialFolder.LocalApplicationData,
            Environment.SpecialFolderOption.DoNotVerify
        );
        // Demo jobs never stand among real ones.
        return own.Length == 0 ? null : Path.Combine(own, "Shaftwright", Demo ? "demo" : "book");
    }
}
