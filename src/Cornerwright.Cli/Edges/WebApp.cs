using System.Data.Common;
using System.Net.Sockets;
using Cornerwright.Garage.Problems;
using Cornerwright.Storage;
using Cornerwright.Web.Hosting;

namespace Cornerwright.Cli.Edges;

/// <summary>The real app, in this process.</summary>
public sealed class WebApp : IApp
{
    /// <summary>The host's own chatter: warnings only, and on the error side, since the output is the answer's.</summary>
    private static readonly string[] Quiet =
    [
        "--Logging:LogLevel:Default=Warning", "--Logging:Console:LogToStandardErrorThreshold=Trace",

        // Why it could not start is told below as a problem, so the host need not print its stack.
        "--Logging:LogLevel:Microsoft.Extensions.Hosting.Internal.Host=None",
    ];

    public string DemoDatabase
    {
        get
        {
            string folder = Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData,
                Environment.SpecialFolderOption.Create), "Cornerwright");
            Directory.CreateDirectory(folder);
            return Path.Combine(folder, "demo.db");
        }
    }

    public string UsualDatabase => CornerwrightHost.UsualDatabase;

    public Problem? Backup(string database, string copy)
    {
        var opened = GarageDatabase.Open(database);
        return opened.Ok
            ? GarageBackup.Make(
                new GarageStore(opened.Value, TimeProvider.System, AutosaveRule.Default),
                ScanStore.At(ScanStore.FolderOf(database)),
                PhotoStore.At(PhotoStore.FolderOf(database)),
                copy).GetAwaiter().GetResult()
            : opened.Problems[0];
    }

    public Problem? Run(IReadOnlyList<string> args, Action<IReadOnlyList<string>> started)
    {
        try
        {
            CornerwrightHost.Start([.. args, .. Quiet], started).GetAwaiter().GetResult();
            return null;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or SocketException)
        {
            return new Problem("--port or --database", string.Join(' ', args), "a free port, and a database file that can be written",
                error.Message + " Choose another.");
        }
        catch (DatabaseRefusedException refused)
        {
            return refused.Problem;
        }
        catch (SettingRefusedException refused)
        {
            return refused.Problem;
        }
        catch (DbException error)
        {
            return new Problem("--database", string.Join(' ', args), "a file of the program's own, in a folder that can be written",
                error.Message + " Choose another with --database.");
        }
    }
}
