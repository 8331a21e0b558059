using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;
using static Cornerwright.Workshop.Findings.Say;

namespace Cornerwright.Workshop.Corners;

/// <summary>
/// Where the travel of the axle's other wheel ends, by its own damper and stops: on an axle that carries both, this wheel leans with it.
/// </summary>
internal sealed class OtherWheel
{
    private readonly Handle _droop, _bump;

    private OtherWheel(Handle droop, Handle bump) => (_droop, _bump) = (droop, bump);

    /// <param name="plan">Takes both ends among its inputs, with the doubt that the other wheel's own readings give them.</param>
    /// <param name="other">The other corner, compiled for itself.</param>
    public static OtherWheel Compile(CornerPlan plan, CornerPlan other)
    {
        string wheel = $"{other.Place.Words()} wheel", path = other.BuildPath + "/travel";
        var solved = new SolvedCorner(other);
        solved.SolveEnds();
        var (droop, bump) = solved.Read.Swept();
        bool droopKnown = double.IsFinite(solved.Read.Droop), bumpKnown = double.IsFinite(solved.Read.FullBump);
        var (droopSigma, bumpSigma) = Doubt(other, solved);
        string Said(bool known, string end, double at) => known
            ? $"{wheel}: {end} taken at {Mm(at, 0)} of travel, by its own damper and stops"
            : $"{wheel}: {end} not known, {Mm(at, 0)} of travel taken";
        return new(
            plan.Inputs.Assume(path + "/droop", $"full droop of the {wheel}", droop, droopSigma, Said(droopKnown, "full droop", droop)),
            plan.Inputs.Assume(path + "/bump", $"full bump of the {wheel}", bump, bumpSigma, Said(bumpKnown, "full bump", bump)));
    }

    /// <summary>m.</summary>
    public (double Droop, double Bump) Range(Reader x)
    {
        double droop = x[_droop];
        return (droop, Math.Max(droop, x[_bump]));
    }

    // Standard deviations. Coordinates of hardpoints move the ends by far less than what stands on the stations does, and cost far more.
    private static (double Droop, double Bump) Doubt(CornerPlan other, SolvedCorner solved)
    {
        var (inputs, moved, one) = (other.Inputs.Inputs, new SolvedCorner(other), new ReadSet());
        var (droop, bump) = solved.Read.Swept();
        double droops = 0, bumps = 0;
        for (int i = 0; i < inputs.Count; i++)
        {
            if (!(inputs[i].Sigma > 0) || !solved.Reads!.InEnds(i) || inputs[i].Path.Contains("/hardpoints/", StringComparison.Ordinal))
            {
                continue;
            }

            one.Become(i);
            moved.Values[i] += inputs[i].Sigma;
            moved.SolveEnds(solved, one);
            var (droopThere, bumpThere) = moved.Read.Swept();
            moved.Values[i] = inputs[i].Value;
            (droops, bumps) = (droops + Square(droopThere - droop), bumps + Square(bumpThere - bump));
        }

        return (Math.Sqrt(droops), Math.Sqrt(bumps));

        static double Square(double a) => double.IsFinite(a) ? a * a : 0;
    }
}
