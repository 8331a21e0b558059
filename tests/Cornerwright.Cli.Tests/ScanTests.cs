using System.Security.Cryptography;
using System.Text;
using Cornerwright.Cli.Edges;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Scans;

namespace Cornerwright.Cli.Tests;

/// <summary>Scans on the command line: looked into, found beside the car file by their content, never silently left out.</summary>
public class ScanTests
{
    // A triangle half a metre over the hub, far from everything: in metres, on the body's axes.
    private static readonly byte[] Above = Encoding.ASCII.GetBytes("v 0 0 0.9\nv 0.3 0 0.9\nv 0 0.3 0.9\nf 1 2 3\n");

    private static readonly string Hash = Convert.ToHexStringLower(SHA256.HashData(Above));

    [Fact]
    public void A_missing_file_is_told_and_can_be_done_without()
    {
        var terminal = WithScan();
        var answer = terminal.Run("judge", "demo.json", "now", "--brief");
        Assert.Equal(ExitCode.BadInput, answer.Code);
        Assert.Contains("scan Lid", answer.Err, StringComparison.Ordinal);
        Assert.Contains("--scans", answer.Err, StringComparison.Ordinal);
        Assert.NotEqual(ExitCode.BadInput, terminal.Run("judge", "demo.json", "now", "--brief", "--no-scans").Code);
    }

    [Theory]
    [InlineData("lid.obj", null)]
    [InlineData("scans/lid.obj", null)]
    [InlineData("scans/HASH.obj", null)]
    [InlineData("elsewhere/lid.obj", "elsewhere")]
    public void It_is_found_beside_the_car_by_name_or_hash(string path, string? folder)
    {
        var terminal = WithScan();
        terminal.Files.Bytes[path.Replace("HASH", Hash, StringComparison.Ordinal)] = Above;
        string[] where = folder is null ? [] : ["--scans", folder];
        var answer = terminal.Run(["judge", "demo.json", "now", "--brief", .. where]);
        Assert.True(answer.Code != ExitCode.BadInput, answer.Err);
    }

    [Fact]
    public void Another_file_of_the_same_name_is_not_taken_for_it()
    {
        var terminal = WithScan();
        terminal.Files.Bytes["lid.obj"] = Encoding.ASCII.GetBytes("v 0 0 0.8\nv 0.1 0 0.9\nv 0 0.1 0.9\nf 1 2 3\n");
        var answer = terminal.Run("judge", "demo.json", "now", "--brief");
        Assert.Equal(ExitCode.BadInput, answer.Code);
        Assert.Contains("not the file that was imported", answer.Err, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_is_no_scan_is_refused_with_its_place()
    {
        var terminal = new Terminal();
        terminal.Files["a.obj"] = "v 1 2\n";
        var answer = terminal.Run("scan-info", "a.obj", "--json");
        Assert.Equal(ExitCode.BadInput, answer.Code);
        Assert.Contains("line 1", answer.Out, StringComparison.Ordinal);
        Assert.Equal(ExitCode.BadInput, terminal.Run("scan-info", "nothing.ply").Code);
    }

    private static Terminal WithScan()
    {
        var scan = new Scan
        {
            Id = "lid",
            Name = "Lid",
            Corner = CornerPlace.FrontLeft,
            FileName = "lid.obj",
            ContentHash = Hash,
            Format = ScanFormat.Obj,
            Unit = ScanUnit.Metre,
            Alignment = new ScanAlignment(),
        };
        var terminal = new Terminal();
        terminal.Files["demo.json"] = CarFile.Write(DemoCar.Read() with { Scans = [scan] });
        return terminal;
    }
}
