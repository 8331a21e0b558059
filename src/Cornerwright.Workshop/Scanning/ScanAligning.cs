using System.Globalization;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Garage.Scans;
using Cornerwright.Mechanics.Clearance.Scans;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;

namespace Cornerwright.Workshop.Scanning;

/// <summary>What a circle of picked points lies on.</summary>
public enum PickedCircle
{
    /// <summary>The outermost edge of the rim's outer lip, on the wheel that is on the car.</summary>
    OuterRimLip,

    /// <summary>A circle on the hub's face: its edge, the centring collar or the bolts' ring at the face.</summary>
    HubFace,
}

/// <summary>An alignment that is proposed, with what speaks for and against it.</summary>
/// <param name="Transform">From the file's points, in metres, to the corner's hub face on the body's axes.</param>
/// <param name="Deviation">Standard deviation of the scan against the wheel, m.</param>
/// <param name="Roughness">Standard deviation of the scan's points off the true surface, m; 0 where the method does not show it.</param>
/// <param name="By">How, in words.</param>
/// <param name="Remarks">Residuals and warnings, as sentences.</param>
public sealed record ScanAligned(RigidTransform Transform, double Deviation, double Roughness, string By, IReadOnlyList<string> Remarks)
{
    /// <summary>The records to keep.</summary>
    public ScanAlignment Record() => new()
    {
        TurnW = Transform.W,
        TurnX = Transform.X,
        TurnY = Transform.Y,
        TurnZ = Transform.Z,
        ForwardMm = Transform.Shift.X * 1000,
        LeftMm = Transform.Shift.Y * 1000,
        UpMm = Transform.Shift.Z * 1000,
        Doubt = TwoSigma(Deviation),
        By = By,
    };

    /// <summary>A length of twice the deviation, rounded up to a tenth of a millimetre.</summary>
    public static Reading TwoSigma(double deviation) =>
        Reading.Of(string.Create(CultureInfo.InvariantCulture, $"{Math.Ceiling(2 * deviation * 1e4) / 10:0.0} mm"), Dimension.Length);
}

/// <summary>Brings a scan to the corner it shows.</summary>
public static class ScanAligning
{
    /// <summary>What one coordinate of a picked point is good for, m. Common practice with a mouse on a phone scan, no source.</summary>
    public const double PickDeviation = 0.0015;

    /// <summary>How upright a phone's file stands, rad: half a degree. Common practice, no source.</summary>
    private const double UprightDeviation = 0.0087;

    /// <summary>Travel over which a scan that is turned about the spindle tilts the wheel's way, m.</summary>
    private const double TravelLever = 0.06;

    /// <summary>
    /// By the wheel: a circle of picks finds it, the whole known wheel refines it, the file's up direction does the rest.
    /// </summary>
    /// <param name="wheel">The wheel that was on the car.</param>
    /// <param name="points">All points of the scan, m, in the file's frame; empty to go by the circle alone.</param>
    /// <param name="circle">Picks, m, in the file's frame.</param>
    /// <param name="on">What they lie on.</param>
    /// <param name="up">Up in the file's frame; any length.</param>
    /// <param name="travel">Of the wheel when scanned, m.</param>
    /// <param name="steer">Of the wheel when scanned, rad, left positive.</param>
    /// <param name="otherWay">The street lies on the other side of the circle
    /// than is guessed; counts only where the whole wheel does not tell.</param>
    public static Aligning ByWheel(PresentWheel wheel, ReadOnlySpan<Vec3> points, ReadOnlySpan<Vec3> circle, PickedCircle on, Vec3 up,
        double travel, double steer, bool otherWay = false)
    {
        ArgumentNullException.ThrowIfNull(wheel);
        var round = CircleFit.Fit(circle, PickDeviation);
        if (round.Why != CircleFitStop.Fitted)
        {
            return Aligning.Not(NoCircle(round.Why));
        }

        if (!(up.Length > 0) || !wheel.PoseAt(travel, steer, out var pose))
        {
            return Aligning.Not("The wheel cannot be at that travel: check what was given for the moment of the scan.");
        }

        var remarks = new List<string> { Circle(round, wheel, on) };
        AddOutliers(remarks, round.Outliers);
        double plane = on == PickedCircle.OuterRimLip ? wheel.OuterLip : 0;
        if (on == PickedCircle.OuterRimLip && !(Math.Abs(round.Radius / wheel.Rim.LipRadius - 1) < 0.1))
        {
            return Aligning.Not(
                remarks[0] + " They do not go together: check the unit of the file, and that the points lie on the rim's edge.");
        }

        // Which way along the axis is the street? Whichever lets the wheel fit better.
        WheelFitted best = default;
        foreach (double sense in on == PickedCircle.OuterRimLip && !points.IsEmpty ? [1.0, -1.0] : (double[])[])
        {
            Vec3 axis = round.Axis * sense;
            var found = WheelFit.Fit(wheel.Solid, wheel.Reach, points, round.Centre - (axis * plane), axis);
            if (found.Why == WheelFitStop.Fitted && (best.Points == 0 || found.Points > best.Points))
            {
                best = found;
            }
        }

        bool whole = best.Points > 0;
        Vec3 spindle = whole ? best.Spindle : Outward(round, points) * (otherWay ? -1 : 1);
        Vec3 hub = whole ? best.HubFace : round.Centre - (spindle * plane);
        double leanNow = Math.Asin(Math.Clamp(spindle.Dot(up.Unit()), -1, 1)), leanKnown = Math.Asin(Math.Clamp(pose.Spindle.Z, -1, 1));
        if (Math.Abs(leanNow) > 0.7)
        {
            return Aligning.Not("The direction taken for up lies along the wheel's axis: choose another.");
        }

        double lean = (leanNow - leanKnown) * 180 / Math.PI;
        remarks.Add(string.Create(CultureInfo.InvariantCulture,
            $"The file's up leans {Math.Abs(lean):0.0} deg {(lean > 0 ? "away from" : "toward")} the car against the camber that was "
                + $"read{(Math.Abs(lean) > 3 ? ": more than a phone's level is off. Check what is taken for up, and the camber." : ".")}"));
        double reach = wheel.Reach;
        double byCircle =
            Math.Sqrt((round.CentreDeviation * round.CentreDeviation) + (reach * reach * round.AxisDeviation * round.AxisDeviation));
        double tilt = TravelLever * Math.Max(UprightDeviation, Math.Abs(lean) * Math.PI / 180);
        double near = whole ? best.Doubt : byCircle;
        if (whole)
        {
            remarks.Add(string.Create(CultureInfo.InvariantCulture,
                $"The wheel was found on {best.Points} points, which lie within {2000 * best.Deviation:0.0} mm of it, 19 in 20."));
        }
        else
        {
            remarks.Add(
                "The whole wheel was not found among the points: the alignment goes by the picked circle alone, and its doubt is larger.");
        }

        return Aligning.Is(new ScanAligned(
            ByAxis(hub, spindle, up, pose), Math.Sqrt((near * near) + (tilt * tilt)), whole ? best.Deviation : 0,
            whole ? "the wheel on the car" : on == PickedCircle.HubFace ? "a circle on the hub face" : "a circle on the rim", remarks));
    }

    private static string NoCircle(CircleFitStop why) => why switch
    {
        CircleFitStop.TooFew => "Pick at least three points round the circle; six, well spread, are better.",
        CircleFitStop.OnALine => "The picked points lie on a line: spread them round the circle.",
        _ => "The picked points cover too short a piece of the circle: pick some on the far side too.",
    };

    /// <summary>By pairs: points picked in the file, and the places on the car that they show.</summary>
    /// <param name="wheel">The wheel that was on the car, round which the doubt is worked out.</param>
    /// <param name="picked">m, in the file's frame.</param>
    /// <param name="places">One for each.</param>
    /// <param name="hubFaceThen">The hub face at the travel of the scan, from its place at the reference state, m.</param>
    public static Aligning ByPairs(PresentWheel wheel, ReadOnlySpan<Vec3> picked, IReadOnlyList<KnownPlace> places, Vec3 hubFaceThen)
    {
        ArgumentNullException.ThrowIfNull(wheel);
        ArgumentNullException.ThrowIfNull(places);
        Vec3[] to = [.. places.Select(p => p.Place)];
        double deviation = Math.Sqrt(places.Select(p => (p.Deviation * p.Deviation) + (PickDeviation * PickDeviation))
            .DefaultIfEmpty(PickDeviation * PickDeviation).Average());
        var fit = RigidFit.Fit(picked, to, deviation);
        if (fit.Why != RigidFitStop.Fitted)
        {
            return Aligning.Not(fit.Why switch
            {
                RigidFitStop.TooFew => "Pick at least three places; four or more show whether one is wrong.",
                RigidFitStop.OnALine => "The places lie on a line, and the scan could turn about it: pick one well beside it.",
                _ => "The places fit far better with left and right exchanged: is it the right corner, and is no pair exchanged?",
            });
        }

        var remarks = new List<string>();
        for (int i = 0; i < places.Count; i++)
        {
            remarks.Add(string.Create(CultureInfo.InvariantCulture, $"{places[i].Name}: {1000 * fit.Residuals[i]:0.0} mm "
                + $"off{(fit.Outliers.Contains(i) ? ", left out: it disagrees with all others" : "")}."));
        }

        remarks.Add(string.Create(CultureInfo.InvariantCulture, $"The picked places lie {100 * fit.Scale:0.0} % as far apart on the car "
            + $"as in the file{(Math.Abs(fit.Scale - 1) > 0.03 ? ": check the unit, and the scanner's scale." : ".")}"));
        return Aligning.Is(new ScanAligned(fit.Transform, DoubtRoundWheel(fit, wheel, hubFaceThen), 0, "picked places", remarks));
    }

    // The largest deviation of the fit at the tread, all round, along the spindle or away from it.
    private static double DoubtRoundWheel(RigidFitted fit, PresentWheel wheel, Vec3 hubFace)
    {
        double worst = 0;
        Span<double> c = stackalloc double[6];
        for (int hour = 0; hour < 12; hour++)
        {
            var (sin, cos) = Math.SinCos(hour * (Math.PI / 6));
            Vec3 away = new(sin, 0, cos);
            fit.CovarianceAt(hubFace + (away * wheel.Tyre.CrownRadius), c);
            double a = c[3], b = (sin * c[1]) + (cos * c[4]), d = (sin * sin * c[0]) + (2 * sin * cos * c[2]) + (cos * cos * c[5]);
            worst = Math.Max(worst, ((a + d) / 2) + Math.Sqrt((((a - d) / 2) * ((a - d) / 2)) + (b * b)));
        }

        return Math.Sqrt(worst);
    }

    /// <summary>The turn and shift that lay one axis with its point on another, and up on up as nearly as that lets it.</summary>
    internal static RigidTransform ByAxis(Vec3 point, Vec3 axis, Vec3 up, in WheelPose onto)
    {
        var file = Axes(axis, up);
        var car = Axes(onto.Spindle, Vec3.UnitZ).Inverse();
        var turn = file.Then(car);
        return turn with { Shift = onto.HubFace - turn.Turn(point) };
    }

    private static RigidTransform Axes(Vec3 axis, Vec3 up)
    {
        Vec3 top = (up - (axis * axis.Dot(up))).Unit();
        return RigidTransform.FromAxes(axis, top, axis.Cross(top));
    }

    // Without the wheel among the points: on the car's side of the hub stands the body, on the street's side nothing.
    private static Vec3 Outward(CircleFitted round, ReadOnlySpan<Vec3> points)
    {
        const double Round = 0.35, Nearest = 0.02, Furthest = 0.3;
        int before = 0, behind = 0;
        foreach (var p in points)
        {
            Vec3 d = p - round.Centre;
            double a = d.Dot(round.Axis);
            if (Math.Abs(a) is > Nearest and < Furthest && (d - (round.Axis * a)).LengthSquared < Round * Round)
            {
                (before, behind) = a > 0 ? (before + 1, behind) : (before, behind + 1);
            }
        }

        return before <= behind ? round.Axis : -round.Axis;
    }

    private static string Circle(CircleFitted round, PresentWheel wheel, PickedCircle on)
    {
        double off = round.Residuals.Where((_, i) => !round.Outliers.Contains(i)).DefaultIfEmpty(0).Max();
        string text = string.Create(CultureInfo.InvariantCulture,
            $"The picked circle is {2000 * round.Radius:0.0} mm across; its points lie within {1000 * off:0.0} mm of it.");
        return on == PickedCircle.OuterRimLip
            ? text + string.Create(CultureInfo.InvariantCulture, $" The rim's edge is {2000 * wheel.Rim.LipRadius:0.0} mm across.") : text;
    }

    private static void AddOutliers(List<string> remarks, IReadOnlyList<int> outliers)
    {
        if (outliers.Count > 0)
        {
            remarks.Add($"Left out, since {(outliers.Count == 1 ? "it disagrees" : "they disagree")} with all others: "
                + $"{string.Join(", ", outliers.Select(i => "point " + (i + 1).ToString(CultureInfo.InvariantCulture)))}.");
        }
    }
}

/// <summary>An alignment, or the sentence why there is none.</summary>
public sealed record Aligning(ScanAligned? Aligned, string WhyNot)
{
    public static Aligning Is(ScanAligned aligned) => new(aligned, "");

    public static Aligning Not(string why) => new(null, why);
}
