using System.Runtime.InteropServices;
using System.Text;
using Microsoft.Win32.SafeHandles;
using Shaftwright.JobFile.Exchange;

namespace Shaftwright.App.Api;

/// <summary>Reads a digital indicator's lines from a device, on a thread of its own: a device that keeps silent, is unplugged or
/// talks nonsense never keeps the program from serving. What goes away is tried again until it is back.</summary>
internal sealed class IndicatorFeed
{
    // Readings that differ by no more than this stand still, mm.
    private const double Still = 0.003;

    private static readonly TimeSpan s_again = TimeSpan.FromMilliseconds(400);

    private readonly string _path;
    private readonly TimeProvider _time;
    private readonly Lock _gate = new();
    private volatile bool _stopped;

    private string _state = "waiting";
    private string? _text;
    private string? _refused;
    private string? _trouble;
    private double _stood;
    private long _seq = 1;
    private long _came;
    private long _stillSince;

    public IndicatorFeed(string path, TimeProvider time)
    {
        _path = path;
        _time = time;
        new Thread(Run) { IsBackground = true, Name = "indicator" }.Start();
    }

    /// <summary>Ends it at the device's next word.</summary>
    public void Stop() => _stopped = true;

    /// <summary>How it stands now.</summary>
    public IndicatorReply Now()
    {
        lock (_gate)
        {
            return new(
                _state,
                _seq,
                _text,
                _text is null ? 0 : (long)_time.GetElapsedTime(_came).TotalMilliseconds,
                _text is null ? 0 : (long)_time.GetElapsedTime(_stillSince).TotalMilliseconds,
                _refused,
                _trouble
            );
        }
    }

    private void Run()
    {
        while (!_stopped)
        {
            try
            {
                // A FIFO opens only when somebody writes to it: until then it is waited for, here and nowhere else.
                using var device = Open(_path);
                Set("open", null);
                Read(device);
                Set("gone", "It was unplugged, or whatever sends to it has ended.");
            }
            catch (Exception e)
                when (e
                        is IOException
                            or UnauthorizedAccessException
                            or NotSupportedException
                            or ArgumentException
                )
            {
                Set("gone", Why(e));
            }
            // Its own thread: nobody else waits with it.
            Thread.Sleep(s_again);
        }
    }

    private void Read(FileStream device)
    {
        var line = new StringBuilder();
        var chunk = new byte[256];
        var first = true;
        int n;
        while (!_stopped && (n = device.Read(chunk, 0, chunk.Length)) > 0)
        {
            foreach (var b in chunk.AsSpan(0, n))
            {
                if (b is not ((byte)'\n' or (byte)'\r'))
                {
                    // What does not end is not kept for ever.
                    if (line.Length <= IndicatorLine.Longest)
                        line.Append(b < 128 ? (char)b : '\uFFFD');
                    continue;
                }
                // Whoever begins to listen in the middle of a line has not heard all of it.
                if (!first && IndicatorLine.Read(line.ToString()) is { } said)
                    Take(said);
                else if (first && IndicatorLine.Read(line.ToString()) is { Text: not null } whole)
                    Take(whole);
                first = false;
                line.Clear();
            }
        }
    }

    private void Take(IndicatorLine line)
    {
        lock (_gate)
        {
            _seq++;
            _refused = line.Refused;
            if (line.Text is null)
                return;
            var now = _time.GetTimestamp();
            if (_text is null || Math.Abs(line.Millimetres - _stood) > Still)
                (_stood, _stillSince) = (line.Millimetres, now);
            (_text, _came) = (line.Text, now);
        }
    }

    private void Set(string state, string? trouble)
    {
        lock (_gate)
        {
            if (_state == state && _trouble == trouble)
                return;
            _seq++;
            (_state, _trouble) = (state, trouble);
            // What an indicator said before it went is not what it says now.
            (_text, _refused) = (null, null);
        }
    }

    private static string Why(Exception e) =>
        e switch
        {
            FileNotFoundException or DirectoryNotFoundException =>
                "It is not there. Is it plugged in?",
            UnauthorizedAccessException =>
                "It may not be read by you: it is a folder, or your user needs the right to it.",
            NotSupportedException => e.Message,
            _ => "It cannot be read: " + e.Message,
        };

    private static FileStream Open(string path)
    {
        var device = OperatingSystem.IsLinux()
            ? new FileStream(OpenQuietly(path), FileAccess.Read, 1, isAsync: false)
            : new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, 1);
        if (!device.CanSeek)
            return device;
        device.Dispose();
        throw new NotSupportedException("It is an ordinary file, not a device.");
    }

    /// <summary>Opens a device without making it this program's terminal: else unplugging it would end the program.</summary>
    private static SafeFileHandle OpenQuietly(string path)
    {
        const int readOnly = 0,
            noControllingTerminal = 0x100,
            closeOnExec = 0x80000;
        if (Directory.Exists(path))
            throw new UnauthorizedAccessException();
        var descriptor = Native.Open(
            Encoding.UTF8.GetBytes(path + '\0'),
            readOnly | noControllingTerminal | closeOnExec
        );
        if (descriptor >= 0)
            return new SafeFileHandle(descriptor, ownsHandle: true);
        const int noEntry = 2,
            noDevice = 6,
            noAccess = 13,
            noSuchDevice = 19;
        throw Marshal.GetLastPInvokeError() switch
        {
            noEntry or noDevice or noSuchDevice => new FileNotFoundException(),
            noAccess => new UnauthorizedAccessException(),
            var code => new IOException(Marshal.GetPInvokeErrorMessage(code)),
        };
    }

    private static class Native
    {
        [DllImport("libc", EntryPoint = "open", SetLastError = true)]
        [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
        public static extern int Open(byte[] path, int flags);
    }
}
