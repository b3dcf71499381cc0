using System.ComponentModel;
using System.Diagnostics;

namespace Shaftwright.App.Verbs;

/// <summary>The desktop, where there is one.</summary>
internal static class Desktop
{
    /// <summary>Opens an address in the user's browser. Does nothing where there is no desktop: the address was printed.</summary>
    public static void Open(string address)
    {
        try
        {
            if (OperatingSystem.IsWindows())
                Process.Start(new ProcessStartInfo(address) { UseShellExecute = true })?.Dispose();
            else if (OperatingSystem.IsMacOS())
                Process.Start("open", [address]).Dispose();
            else if (HasDisplay())
                Process
                    .Start(
                        new ProcessStartInfo("xdg-open", [address])
                        {
                            // What a browser grumbles is not ours to print.
                            RedirectStandardError = true,
                            RedirectStandardOutput = true,
                        }
                    )
                    ?.Dispose();
        }
        catch (Win32Exception)
        {
            // No such opener. The address stands on the screen.
        }
    }

    private static bool HasDisplay() =>
        !string.IsNullOrEmpty(Environment.GetEnvironmentVariable("DISPLAY"))
        || !string.IsNullOrEmpty(Environment.GetEnvironmentVariable("WAYLAND_DISPLAY"));
}
