namespace Cornerwright.Workshop.Ranking;

/// <summary>What one stack comes to on every perch, mount, damper and stop.</summary>
internal sealed class StackSweep
{
    /// <summary>
    /// Parts that miss each other by more than this are no near misses, m: the branch is cut without looking at what hangs on it.
    /// </summary>
    private const double NearFit = 0.002;

    public List<SuspensionCandidate> Candidates { get; } = [];

    /// <summary>Choices refused, by <see cref="StaticCheck"/>.</summary>
    public long[] Refused { get; } = new long[StaticChecks.Count];

    public MissList Misses { get; } = new();

    /// <summary>Evaluates every choice that has this stack. Branches are cut where parts do not fit on each other.</summary>
    public static StackSweep Of(SearchSpace space, int stackIndex)
    {
        var sweep = new StackSweep();
        StaticSheet left = new(), right = new();
        var stack = space.Stacks[stackIndex];
        if (stack.FitMargin < -NearFit)
        {
            sweep.Refused[(int)StaticCheck.FitBetween] += (long)space.Perches.Length * space.StationsCount;
            return sweep;
        }

        for (int p = 0; p < space.Perches.Length; p++)
        {
            var perch = space.Perches[p];
            if (space.Left.PerchMargin(stack, perch) is var fit && fit < -NearFit && stack.FitMargin >= 0)
            {
                sweep.Refused[(int)StaticCheck.FitPerch] += space.StationsCount;
                continue;
            }

            for (int i = 0; i < space.StationsCount; i++)
            {
                StaticStation l = space.LeftStations[i], r = space.RightStations[i];
                bool leftHolds = space.Left.Evaluate(stack, perch, l, left);
                if (leftHolds && space.Right.Evaluate(stack, perch, r, right))
                {
                    sweep.Candidates.Add(Candidate(space, space.ChoiceOf(stackIndex, p, i), left, right, l, r));
                    continue;
                }

                int broken = leftHolds ? right.Broken : left.Broken;
                sweep.Refused[broken]++;
                sweep.Note(space, stackIndex, p, i, broken, leftHolds ? right : left);
            }
        }

        return sweep;
    }

    private static SuspensionCandidate Candidate(SearchSpace space, in SuspensionChoice choice, StaticSheet left, StaticSheet right,
        StaticStation l, StaticStation r) => new(
        choice,
        (left.Perch, right.Perch),
        (left.WheelRate, right.WheelRate),
        (l.Wanted - l.Unsprung, r.Wanted - r.Unsprung),
        (l.Droop, r.Droop),
        (left.FullBump, right.FullBump),
        Math.Max(Math.Abs(left.Ride - l.TargetTravel), Math.Abs(right.Ride - r.TargetTravel)),
        space.CostOf(choice));

    // A near miss is worth a second look: how many checks does it break in all?
    private void Note(SearchSpace space, int stackIndex, int perchIndex, int station, int broken, StaticSheet sheet)
    {
        var check = (StaticCheck)broken;
        var perch = space.Perches[perchIndex];
        double unit = check == StaticCheck.SeatedAtDroop && perch.Turns ? perch.Pitch : 1;
        double steps = Math.Abs(sheet.Margin[broken]) * unit / StaticChecks.Step(StaticChecks.UnitOf(check));
        string kind = $"{check}/{space.Stacks[stackIndex].MainSpring.Id}";
        if (!Misses.Wants(kind, steps) || !space.Stacks[stackIndex].Complete)
        {
            return;
        }

        StaticSheet left = new(), right = new();
        StaticStation l = space.LeftStations[station], r = space.RightStations[station];
        space.Left.Evaluate(space.Stacks[stackIndex], perch, l, left, toTheEnd: true);
        space.Right.Evaluate(space.Stacks[stackIndex], perch, r, right, toTheEnd: true);
        var candidate = Candidate(space, space.ChoiceOf(stackIndex, perchIndex, station), left, right, l, r);
        Misses.Add(new Miss(kind, candidate, -1, Math.Max(left.BrokenCount, right.BrokenCount), steps));
    }
}
