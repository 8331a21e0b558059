using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;
using static Cornerwright.Workshop.Findings.Say;

namespace Cornerwright.Workshop.Checks;

/// <summary>Does every piece of the stack go on what lies below and above it, and stay there.</summary>
internal static class FitChecks
{
    public static IEnumerable<CornerCheck> For(CornerPlan plan)
    {
        var stack = plan.Parts.Stack;
        if (stack.Count == 0)
        {
            yield break;
        }

        // From the perch upward: every spring against the register that enters it. A sheet with none at all is a plain pad and centres
        // nothing; one that has a collar on one side or knows its height is an adapter, and what it lacks is not known.
        if (plan.Parts.Perch is { } perch && stack[0] is Spring lowest)
        {
            yield return Fit(plan, lowest, perch.Register, "parts/perches/" + perch.Id + "/register", perch.Name, "perch");
        }

        for (int i = 0; i < stack.Count; i++)
        {
            if (stack[i] is not Sheet sheet)
            {
                continue;
            }

            bool adapter = sheet.LowerRegister is not null || sheet.UpperRegister is not null || sheet.CollarHeight is not null;
            if (i > 0 && stack[i - 1] is Spring below && adapter)
            {
                yield return Fit(plan, below, sheet.LowerRegister, $"parts/sheets/{sheet.Id}/lowerRegister", sheet.Name,
                    sheet.Id + "-below");
            }

            if (i < stack.Count - 1 && stack[i + 1] is Spring above && adapter)
            {
                yield return Fit(plan, above, sheet.UpperRegister, $"parts/sheets/{sheet.Id}/upperRegister", sheet.Name,
                    sheet.Id + "-above");
            }

            if (adapter)
            {
                yield return Captive(plan, sheet);
            }
        }

        for (int i = 0; i + 1 < stack.Count; i++)
        {
            if (stack[i] is Spring first && stack[i + 1] is Spring second)
            {
                yield return Bare(plan, first, second);
            }
        }

        if (plan.Parts.TopMount is { } mount && stack[^1] is Spring highest)
        {
            yield return Fit(plan, highest, mount.Register, "parts/topMounts/" + mount.Id + "/register", mount.Name, "mount");
        }
    }

    private static CornerCheck Fit(CornerPlan plan, Spring spring, Reading? register, string registerPath, string holder, string place)
    {
        double tightest = Limit(plan.Limits.FitTightest), loosest = Limit(plan.Limits.FitLoosest);
        var bore = plan.Inputs.Add($"parts/springs/{spring.Id}/innerDiameter", $"inner diameter of {spring.Name}", spring.InnerDiameter);
        var collar = plan.Inputs.Add(registerPath, $"register of {holder}", register);
        return new CornerCheck
        {
            Kind = CheckCatalogue.Fit,
            PartId = $"{place}-{spring.Id}",
            PartName = $"{spring.Name} on {holder}",
            Missing = [.. plan.Inputs.Lacking(bore, collar)],
            Value = n => n.X[bore] - n.X[collar],
            Low = -tightest,
            High = loosest,
            Sentence = (_, value) => value < -tightest
                ? $"{spring.Name} is {Mm(-value)} too small for the register of {holder}: it does not go on."
                : value < 0
                ? $"{spring.Name} goes on {holder} with {Mm(-value)} of interference: anti-seize on the register, and no hammer."
                : value <= loosest ? $"{spring.Name} sits on {holder} with {Mm(value)} of play."
                : $"{spring.Name} has {Mm(value)} of play on {holder}: it can wander off centre. An adapter ring centres it.",
        };
    }

    private static CornerCheck Captive(CornerPlan plan, Sheet sheet)
    {
        var collar = plan.Inputs.Add($"parts/sheets/{sheet.Id}/collarHeight", $"collar height of {sheet.Name}", sheet.CollarHeight);
        return new CornerCheck
        {
            Kind = CheckCatalogue.Captive,
            PartId = sheet.Id,
            PartName = sheet.Name,
            Missing = [.. plan.MissingForSpring().Union(plan.MissingForDamper()), .. plan.Inputs.Lacking(collar)],
            Value = n => n.X[collar] - (n.SpringSpace(n.Droop) - Mechanics.Springs.SpringStack.FreeLength(n.Stack)),
            Low = 0,
            Sentence = (_, value) => value >= 0
                ? $"However far the wheel hangs, the collar of {sheet.Name} does not leave its spring."
                : $"With the wheel hanging the stack opens {Mm(-value)} further than the collar of {sheet.Name} is high: it "
                + $"can fall out of place.",
            Worst = n => new WorstState("at full droop", n.Droop),
        };
    }

    private static CornerCheck Bare(CornerPlan plan, Spring first, Spring second)
    {
        var a = plan.Inputs.Add($"parts/springs/{first.Id}/innerDiameter", $"inner diameter of {first.Name}", first.InnerDiameter);
        var b = plan.Inputs.Add($"parts/springs/{second.Id}/innerDiameter", $"inner diameter of {second.Name}", second.InnerDiameter);
        double loosest = Limit(plan.Limits.FitLoosest);
        return new CornerCheck
        {
            Kind = CheckCatalogue.FitBare,
            PartId = $"{first.Id}-{second.Id}",
            PartName = $"{second.Name} straight on {first.Name}",
            Missing = [.. plan.Inputs.Lacking(a, b)],
            Value = n => n.X[b] - n.X[a],
            Low = -loosest,
            High = loosest,
            Sentence = (_, value) => $"{second.Name} stands on {first.Name} with no sheet between; their bores "
                + $"differ by {Mm(Math.Abs(value))}. A sheet with registers keeps them in line.",
        };
    }
}
