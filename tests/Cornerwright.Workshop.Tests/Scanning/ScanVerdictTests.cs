using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Scanning;
using Xunit.Abstractions;

namespace Cornerwright.Workshop.Tests.Scanning;

/// <summary>The demo car judged with its scan: what the scan says of the arch agrees with what the tape says of it.</summary>
public class ScanVerdictTests(ITestOutputHelper output)
{
    private static readonly string[] OfTheTape = ["clear-arch-lip", "clear-liner", "clear-chassis-leg"];

    [Fact]
    public void In_every_build_the_least_gap_to_the_scan_is_the_tape_s_within_their_doubts()
    {
        var (car, shelf) = AlignedDemo.Make();
        Assert.Empty(shelf.Problems);
        foreach (var build in car.Builds)
        {
            var front = Judge.Build(car, build.Id, JudgeOptions.FindingsOnly with { Scans = shelf })
                .Findings.Where(f => f.Corner == CornerPlace.FrontLeft).ToList();
            Finding scan = front.Single(f => f.Check == "scan-arch"),
                tape = front.Where(f => OfTheTape.Contains(f.Check, StringComparer.Ordinal)).MinBy(f => f.Value!.Value.Si)!;
            double apart = scan.Value!.Value.Si - tape.Value!.Value.Si,
                doubt = Math.Sqrt(Math.Pow(scan.Doubt!.Value.Si, 2) + Math.Pow(tape.Doubt!.Value.Si, 2));
            output.WriteLine(
                $"{build.Id}: scan {scan.Value?.Text} ± {scan.Doubt?.Text}, {tape.Title} {tape.Value?.Text} ± {tape.Doubt?.Text}");

            // Two standard deviations of each; the roughest point of a scan counts, so it comes out nearer.
            Assert.InRange(apart, -doubt, 0.5 * doubt);
        }
    }

    [Fact]
    public void Without_its_points_at_hand_nothing_is_said_of_a_scan()
    {
        var (car, _) = AlignedDemo.Make();
        Assert.DoesNotContain(Judge.Build(car, "now", JudgeOptions.FindingsOnly).Findings, f =>
            f.Check.StartsWith("scan-", StringComparison.Ordinal));
    }

    [Fact]
    public void A_scan_whose_file_is_gone_is_unknown_and_says_what_to_do()
    {
        var (car, _) = AlignedDemo.Make();
        var shelf = ScanShelf.Of(car, _ => Garage.Problems.Checked<Garage.Scans.RawScan>.Wrong(
            new Garage.Problems.Problem("scan file", "x", "a file that is kept", "Import the scan's file again.")));
        var finding = Judge.Build(car, "now", JudgeOptions.FindingsOnly with { Scans = shelf }).Findings.Single(f =>
            f.Check == "scan-arch");
        Assert.Equal(Verdict.Unknown, finding.Verdict);
        Assert.Contains("Import", Assert.Single(finding.Missing).Label, StringComparison.Ordinal);
    }

    [Fact]
    public void Mirrored_it_is_judged_at_the_other_side_with_more_doubt()
    {
        var (car, shelf) = AlignedDemo.Make();
        var raw = DemoScanRaw.Read();
        var both = ScanShelf.Of(car with { Scans = [car.Scans[0] with { MirroredToo = true }] }, _ =>
            Garage.Problems.Checked<Garage.Scans.RawScan>.From(raw));
        var findings = Judge.Build(car, "touring", JudgeOptions.FindingsOnly with { Scans = both })
            .Findings.Where(f => f.Check == "scan-arch").ToList();
        Assert.Equal([CornerPlace.FrontLeft, CornerPlace.FrontRight], findings.Select(f => f.Corner!.Value).Order());
        Assert.True(findings.Single(f => f.Corner == CornerPlace.FrontRight).Doubt!.Value.Si
            > findings.Single(f => f.Corner == CornerPlace.FrontLeft).Doubt!.Value.Si);
        Assert.Single(shelf.Scans);
    }
}
