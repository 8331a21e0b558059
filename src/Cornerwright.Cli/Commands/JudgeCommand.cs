using System.ComponentModel;
using Cornerwright.Cli.Edges;
using Cornerwright.Cli.Json;
using Cornerwright.Cli.Text;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Settling;
using Spectre.Console.Cli;

namespace Cornerwright.Cli.Commands;

public sealed class JudgeSettings : ScannedCarSettings
{
    [CommandArgument(1, "[BUILD]")]
    [Description("The build's id; not needed where the file has only one.")]
    public string? Build { get; init; }

    [CommandOption("--corner <PLACE>")]
    [Description("Show only this: front-left, front-right, rear-left, rear-right, front, rear, left or right.")]
    public string[] Corners { get; init; } = [];

    [CommandOption("--verdict <WORD>")]
    [Description("Show only this: fails, tight, unknown or holds; several with commas.")]
    public string[] Verdicts { get; init; } = [];

    [CommandOption("--check <NAME>")]
    [Description("Show only this check, by its name in the JSON document.")]
    public string[] Checks { get; init; } = [];

    [CommandOption("--brief")]
    [Description("One line a finding.")]
    public bool Brief { get; init; }

    [CommandOption("--settle")]
    [Description("Say which reading, measured better, would settle what is in doubt.")]
    public bool Settle { get; init; }

    [CommandOption("--strict")]
    [Description("Exit code 1 also where a check is tight or unknown.")]
    public bool Strict { get; init; }
}

/// <summary>Judges one build. The filters choose what is shown; the exit code speaks of the whole build.</summary>
public sealed class JudgeCommand(Surroundings around) : Verb<JudgeSettings>(around)
{
    protected override int Act(JudgeSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        var car = ReadCar(settings.File);
        if (!car.Ok)
        {
            return Refuse(settings, car.Problems);
        }

        var build = BuildChoice.Find(car.Value, settings.Build);
        if (!build.Ok)
        {
            return Refuse(settings, build.Problems);
        }

        var scans = ScansOf(settings, car.Value);
        if (!scans.Ok)
        {
            return Refuse(settings, scans.Problems);
        }

        var judgement = Judge.Build(car.Value, build.Value.Id,
            new JudgeOptions(Cures: !settings.Brief || settings.Json, Pictures: false) { Scans = scans.Value });
        var filter = FindingFilter.Read(settings.Corners, settings.Verdicts, settings.Checks, judgement.Findings);
        if (!filter.Ok)
        {
            return Refuse(settings, filter.Problems);
        }

        IReadOnlyList<Settlement>? settlements = settings.Settle
            ? [.. judgement.Findings.Where(f => filter.Value.Shows(f) && f.Probability is { } p && SettlingFinder.Doubt(p) >= LeastDoubt)
                .Select(f => SettlingFinder.Of(car.Value, build.Value, f, scans: scans.Value)).OfType<Settlement>()] : null;
        if (settings.Json)
        {
            Around.Out.Document(JudgementJson.Write(judgement, filter.Value.Shows, filter.Value.Shows, settlements));
        }
        else
        {
            JudgementText.Write(Around.Out, judgement, filter.Value.Shows, filter.Value.Shows, settings.Brief);
            if (settlements is not null)
            {
                SettlementText.Write(Around.Out, settlements);
            }
        }

        return CodeOf(judgement, settings.Strict);
    }

    /// <summary>Less doubt than this is not worth a reading.</summary>
    private const double LeastDoubt = 0.02;

    internal static int CodeOf(Judgement judgement, bool strict) =>
        judgement.Verdict == Verdict.Fails || (strict && judgement.Verdict != Verdict.Holds) ? ExitCode.Fails : ExitCode.Holds;
}
