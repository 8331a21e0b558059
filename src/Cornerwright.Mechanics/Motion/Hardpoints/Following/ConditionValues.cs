using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;
using Cornerwright.Mechanics.Motion.Hardpoints.Poses;
using Cornerwright.Mechanics.Numerics;

namespace Cornerwright.Mechanics.Motion.Hardpoints.Following;

/// <summary>The five conditions at one pose: how far each is missed, the Jacobian, and the right sides of the rates.</summary>
/// <remarks>
/// Unknowns: turn X, Y, Z (rad) and the origin's X and Y (m); its Z is the travel. All rows in m. Source: docs/theory/hardpoints.md §3, §4.
/// </remarks>
internal sealed class ConditionValues(KnuckleLinkage linkage)
{
    private const int N = KnuckleLinkage.Conditions;

    private readonly FiveEquations equations = new();
    private readonly double[] missed = new double[N];
    private readonly double[] byHeight = new double[N];     // of what is missed, by the origin's Z
    private readonly double[] byRack = new double[N];       // by the rack
    private readonly double[] byPlate = new double[N];      // by the plate
    private readonly double[] work = new double[N];
    private readonly Vec3[] arms = new Vec3[N];             // rod and plane: the turned point; line: the turned direction
    private readonly Vec3[] reaches = new Vec3[N];          // rod: unit vector; line: to the body point; plane: its direction
    private readonly double[] lengths = new double[N];

    public Span<double> Work => work;

    public ReadOnlySpan<double> Missed => missed;

    /// <summary>The Jacobian row by row, until it is factored.</summary>
    public ReadOnlySpan<double> Entries => equations.Entries;

    /// <summary>Fills what is missed, and with it the Jacobian's entries if wanted.</summary>
    public void Evaluate(in KnucklePose pose, in LinkagePlace place, bool jacobianToo = true)
    {
        var turn = new KnuckleTurn(pose);
        Vec3 origin = pose.Origin;
        Span<double> rows = equations.Entries;
        ReadOnlySpan<KnuckleCondition> all = linkage.All;
        Vec3 plate = linkage.Plate;
        for (int i = 0; i < N; i++)
        {
            ref readonly KnuckleCondition c = ref all[i];
            Vec3 turned = turn.Apply(c.InKnuckle), moment, force;
            switch (c.Kind)
            {
                case ConditionKind.Rod:
                    double x = origin.X + turned.X - c.OnBody.X;
                    double y = origin.Y + turned.Y - c.OnBody.Y - (c.ByRack * place.Rack);
                    double z = origin.Z + turned.Z - c.OnBody.Z;
                    double length = Math.Sqrt((x * x) + (y * y) + (z * z));
                    missed[i] = length - c.Constant;
                    if (!jacobianToo)
                    {
                        continue;
                    }

                    double over = 1 / length;
                    force = new(x * over, y * over, z * over);
                    (lengths[i], byRack[i], byPlate[i], reaches[i]) = (length, -c.ByRack * force.Y, 0, force);
                    moment = turned.Cross(force);
                    break;
                case ConditionKind.AcrossLine:
                    Vec3 reach = c.OnBody - origin;
                    reach = c.Slides ? reach + (plate * place.Plate) : reach;
                    missed[i] = turned.Dot(reach) - c.Constant;
                    if (!jacobianToo)
                    {
                        continue;
                    }

                    (byRack[i], byPlate[i], reaches[i]) = (0, c.Slides ? turned.Dot(plate) : 0, reach);
                    (moment, force) = (turned.Cross(reach), -turned);
                    break;
                default:
                    missed[i] = c.OnBody.Dot(origin + turned) - c.Constant;
                    if (!jacobianToo)
                    {
                        continue;
                    }

                    (byRack[i], byPlate[i], reaches[i]) = (0, 0, c.OnBody);
                    (moment, force) = (turned.Cross(c.OnBody), c.OnBody);
                    break;
            }

            arms[i] = turned;
            byHeight[i] = force.Z;
            Span<double> row = rows.Slice(i * N, N);
            (row[0], row[1], row[2], row[3], row[4]) = (moment.X, moment.Y, moment.Z, force.X, force.Y);
        }
    }

    /// <summary>Factors the Jacobian; the sign of its determinant tells branches apart.</summary>
    public int Factor(out double leastPivot) => equations.Factor(out leastPivot);

    /// <summary>Damped least squares' step for what is missed; the Jacobian must not have been factored.</summary>
    public bool DampedStep(double damping, FiveEquations normal, Span<double> x)
    {
        ReadOnlySpan<double> rows = equations.Entries;
        Span<double> entries = normal.Entries;
        for (int j = 0; j < N; j++)
        {
            double side = 0;
            for (int i = 0; i < N; i++)
            {
                side -= rows[(i * N) + j] * missed[i];
            }

            x[j] = side;
            for (int k = 0; k < N; k++)
            {
                double sum = j == k ? damping : 0;
                for (int i = 0; i < N; i++)
                {
                    sum += rows[(i * N) + j] * rows[(i * N) + k];
                }

                entries[(j * N) + k] = sum;
            }
        }

        if (normal.Factor(out _) == 0)
        {
            return false;
        }

        normal.Solve(x);
        return true;
    }

    /// <summary>
    /// How the conditions share the load that holds the linkage at a dead centre: the left null vector of the Jacobian, by inverse
    /// iteration (Golub and Van Loan, Matrix Computations, 4th ed. (2013), §7.6.1). The Jacobian must not have been factored.
    /// </summary>
    public void LoadsAtDeadCentre(FiveEquations square, Span<double> loads)
    {
        ReadOnlySpan<double> rows = equations.Entries;
        Span<double> entries = square.Entries;
        for (int i = 0; i < N; i++)
        {
            loads[i] = 1 + (0.1 * i);
            for (int k = 0; k < N; k++)
            {
                double sum = i == k ? 1e-9 : 0;
                for (int j = 0; j < N; j++)
                {
                    sum += rows[(i * N) + j] * rows[(k * N) + j];
                }

                entries[(i * N) + k] = sum;
            }
        }

        if (square.Factor(out _) == 0)
        {
            return;
        }

        for (int turn = 0; turn < 3; turn++)
        {
            square.Solve(loads);
            double size = 0;
            foreach (double load in loads)
            {
                size = Math.Max(size, Math.Abs(load));
            }

            for (int i = 0; i < N; i++)
            {
                loads[i] /= size;
            }
        }
    }

    /// <summary>Newton's step for what is missed.</summary>
    public void Correction(Span<double> x)
    {
        for (int i = 0; i < N; i++)
        {
            x[i] = -missed[i];
        }

        equations.Solve(x);
    }

    /// <summary>First-order motion for a rise and for moves of rack and plate, m.</summary>
    public void Tangent(double rise, double rack, double plate, Span<double> x)
    {
        for (int i = 0; i < N; i++)
        {
            x[i] = -((byHeight[i] * rise) + (byRack[i] * rack) + (byPlate[i] * plate));
        }

        equations.Solve(x);
    }

    public KnuckleTwist ByTravel() => Twist(1, 0, 0);

    public KnuckleTwist ByRack() => Twist(0, 1, 0);

    public KnuckleTwist ByPlate() => Twist(0, 0, 1);

    /// <summary>Accelerations when travel is the time: the conditions differentiated twice.</summary>
    public KnuckleTwist ByTravelTwice(in KnuckleTwist motion)
    {
        Vec3 w = motion.Turn, v = motion.Shift;
        Span<double> x = work;
        for (int i = 0; i < N; i++)
        {
            Vec3 across = w.Cross(arms[i]), inward = w.Cross(across), reach = reaches[i];
            x[i] = linkage.All[i].Kind switch
            {
                ConditionKind.Rod => -(reach.Dot(inward) + ((v + across).LengthSquared / lengths[i])),
                ConditionKind.AcrossLine => -(inward.Dot(reach) - (2 * across.Dot(v))),
                _ => -reach.Dot(inward),
            };
        }

        equations.Solve(x);
        return new(new(x[0], x[1], x[2]), new(x[3], x[4], 0));
    }

    private KnuckleTwist Twist(double rise, double rack, double plate)
    {
        Span<double> x = work;
        Tangent(rise, rack, plate, x);
        return new(new(x[0], x[1], x[2]), new(x[3], x[4], rise));
    }
}
