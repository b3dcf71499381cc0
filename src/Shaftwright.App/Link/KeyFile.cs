using System.Runtime.Versioning;
using System.Security.AccessControl;
using System.Security.Principal;
using System.Text;

namespace Shaftwright.App.Link;

/// <summary>A file that only its owner may read: it holds a private key.</summary>
internal static class KeyFile
{
    /// <summary>Writes it, whole or not at all, in the place of one that is there.</summary>
    public static void Write(string file, string pem)
    {
        var fresh = $"{file}.{Guid.NewGuid():N}.new";
        try
        {
            // Nobody else may look in before the permissions are right: the file is born with them.
            using (
                var stream = OperatingSystem.IsWindows()
                    ? CreateOnWindows(fresh)
                    : CreateOnUnix(fresh)
            )
                stream.Write(Encoding.ASCII.GetBytes(pem));
            File.Move(fresh, file, overwrite: true);
        }
        finally
        {
            File.Delete(fresh);
        }
    }

    /// <summary>Reads it, after taking away what others may do with it: it may have been copied here by a careless hand.</summary>
    public static string Read(string file)
    {
        if (!OperatingSystem.IsWindows())
            File.SetUnixFileMode(file, UnixFileMode.UserRead | UnixFileMode.UserWrite);
        return File.ReadAllText(file, Encoding.ASCII);
    }

    /// <summary>Makes a folder that only its owner may enter.</summary>
    public static void MakeFolder(string folder)
    {
        if (OperatingSystem.IsWindows())
            Directory.CreateDirectory(folder);
        else
            Directory.CreateDirectory(
                folder,
                UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute
            );
    }

    [UnsupportedOSPlatform("windows")]
    private static FileStream CreateOnUnix(string file) =>
        new(
            file,
            new FileStreamOptions
            {
                Mode = FileMode.CreateNew,
                Access = FileAccess.Write,
                UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite,
            }
        );

    [SupportedOSPlatform("windows")]
    private static FileStream CreateOnWindows(string file)
    {
        using var user = WindowsIdentity.GetCurrent();
        var owner = new FileSecurity();
        owner.SetAccessRuleProtection(isProtected: true, preserveInheritance: false);
        owner.AddAccessRule(
            new FileSystemAccessRule(
                user.User!,
                FileSystemRights.FullControl,
                AccessControlType.Allow
            )
        );
        return new FileInfo(file).Create(
            FileMode.CreateNew,
            FileSystemRights.Write,
            FileShare.None,
            4096,
            FileOptions.None,
            owner
        );
    }
}
