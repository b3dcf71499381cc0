using System.Runtime.InteropServices;
using System.Text;

namespace Shaftwright.App.Tests.Api;

/// <summary>A simulated device: the far end of a pseudo-terminal. What is sent here is read from <see cref="Path"/> as from a
/// serial line; disposing it pulls the plug.</summary>
internal sealed class Pty : IDisposable
{
    private int _master;

    public Pty()
    {
        const int readWrite = 2,
            noControllingTerminal = 0x100;
        _master = Native.posix_openpt(readWrite | noControllingTerminal);
        if (_master < 0 || Native.grantpt(_master) != 0 || Native.unlockpt(_master) != 0)
            throw new InvalidOperationException("There is no pseudo-terminal to be had.");
        var name = new byte[128];
        if (Native.ptsname_r(_master, name, name.Length) != 0)
            throw new InvalidOperationException("The pseudo-terminal has no name.");
        Path = Encoding.UTF8.GetString(name, 0, Array.IndexOf(name, (byte)0));
    }

    /// <summary>The near end.</summary>
    public string Path { get; }

    /// <summary>Sends bytes as they are.</summary>
    public void Send(string text)
    {
        var bytes = Encoding.Latin1.GetBytes(text);
        for (var sent = 0; sent < bytes.Length; )
        {
            var n = Native.write(_master, bytes[sent..], bytes.Length - sent);
            if (n <= 0)
                throw new InvalidOperationException("The pseudo-terminal takes no more.");
            sent += (int)n;
        }
    }

    public void Dispose()
    {
        if (_master >= 0)
            _ = Native.close(_master);
        _master = -1;
    }

#pragma warning disable SYSLIB1054, CA2101, IDE1006 // The system's own names; test code, no need for generated marshalling.
    private static class Native
    {
        [DllImport("libc", SetLastError = true)]
        [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
        public static extern int posix_openpt(int flags);

        [DllImport("libc", SetLastError = true)]
        [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
        public static extern int grantpt(int fd);

        [DllImport("libc", SetLastError = true)]
        [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
        public static extern int unlockpt(int fd);

        [DllImport("libc", SetLastError = true)]
        [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
        public static extern int ptsname_r(int fd, byte[] name, nint length);

        [DllImport("libc", SetLastError = true)]
        [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
        public static extern nint write(int fd, byte[] bytes, nint count);

        [DllImport("libc", SetLastError = true)]
        [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
        public static extern int close(int fd);
    }
#pragma warning restore SYSLIB1054, CA2101, IDE1006
}
