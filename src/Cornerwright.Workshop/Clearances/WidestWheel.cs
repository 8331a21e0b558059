using System.Globalization;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Designations;
using Cornerwright.Mechanics.Clearance;
using Cornerwright.Workshop.Checks;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Learning;
using Cornerwright.Workshop.Scanning;

namespace Cornerwright.Workshop.Clearances;

/// <summary>Which wheels to try.</summary>
/// <param name="RimCode">Diameter code; null for that of the build.</param>
/// <param name="LeastWidthMm">Narrowest tyre, mm.</param>
/// <param name="MostWidthMm">Widest tyre, mm.</param>
public sealed record WidestTask(double? RimCode = null, int LeastWidthMm = 155, int MostWidthMm = 305);

/// <summary>How wide one can go at a corner.</summary>
/// <param name="Missing">What keeps it from being computed, in words; empty if nothing does.</param>
/// <param name="Envelope">The room for tyre with the wanted gaps taken off, as a closed outline in S
/// (a, r), m, as seen from the middle of the present tyre; empty where that has no room itself.</param>
/// <param name="Present">Outline of the build's tyre, for the same picture.</param>
/// <param name="Sizes">Sizes that clear with some offset, widest first.</param>
/// <param name="Tried">Sizes tried.</param>
/// <param name="Doubt">Two standard deviations of the worst-lying scan, m; 0 without scans. It is not taken off.</param>
public sealed record WidestAnswer(
    IReadOnlyList<string> Missing, IReadOnlyList<ProfilePoint> Envelope, IReadOnlyList<ProfilePoint> Present,
    IReadOnlyList<SizeWindow> Sizes, int Tried, double Doubt);

/// <summary>
/// How wide can I go: the room round the wheel, and the tyre sizes and offsets that fit it, certified over all travel and steer.
/// </summary>
public static class WidestWheel
{
    private const int Rays = 48;
    private const int RayLimit = 40;
    private const double RayLength = 0.15;

    /// <summary>Offsets further from the build's than this are not looked at, m.</summary>
    private const double OffsetRange = 0.060;

    /// <summary>Least step along the offset, m: a window narrower than this may be missed.</summary>
    private const double OffsetStep = 5e-4;

    /// <summary>Works out room and sizes.</summary>
    /// <param name="car">The car.</param>
    /// <param name="build">Its motion, travel, spacer and limits count; its wheel and tyre are replaced.</param>
    /// <param name="place">The corner.</param>
    /// <param name="scans">The points of the car's scans; null where there are none at hand.</param>
    /// <param name="task">Which wheels.</param>
    /// <param name="progress">From 0 to 1.</param>
    /// <param name="cancel">Stops it with an exception.</param>
    public static WidestAnswer Of(
        Car car, Build build, CornerPlace place, ScanShelf? scans = null, WidestTask? task = null, IProgress<double>? progress = null,
        CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(build);
        var plan = CornerPlan.Compile(car, build, place, CarLearning.InUse(car));
        string[] missing = [.. plan.Clearance.Missing.Concat(plan.Clearance.MissingAtLock).Select(m => m.Label)];
        if (missing.Length > 0 || plan.Wheel is null)
        {
            return new(missing, [], [], [], 0, 0);
        }

        var solved = new SolvedCorner(plan);
        solved.Solve();
        var numbers = solved.Read;
        string[] open = [.. ClearanceChecks.MissingAtEnds(plan, numbers).Select(m => m.Label)];
        if (open.Length > 0)
        {
            return new(open, [], [], [], 0, 0);
        }

        PlacedScan[] here = [.. scans?.At(place) ?? []];
        var room = new WheelRoom(numbers, here);
        if (room.Things == 0)
        {
            return new(["something near the wheel: a gap reading, a strut, or a scan"], [], [], [], 0, 0);
        }

        TyreSection tyre = plan.Wheel.Tyre(numbers.X, 0, 0);
        if (!tyre.IsSound)
        {
            return new(["a tyre and a rim whose sizes go together"], [], [], [], 0, 0);
        }

        var outline = new ProfilePoint[TyreProfile.PointCount(12)];
        TyreProfile.Write(tyre, 12, outline);
        ProfilePoint[] envelope = Envelope(room, tyre, cancel);
        progress?.Report(0.2);
        var sizes = Sizes(plan, tyre, task ?? new());
        var windows = new List<SizeWindow>();
        for (int i = 0; i < sizes.Count; i++)
        {
            cancel.ThrowIfCancellationRequested();
            if (Window(room, sizes[i], plan.Wheel.AxialCentre(numbers.X), numbers.X[plan.Wheel.Spacer]) is { } window)
            {
                windows.Add(window);
            }

            progress?.Report(0.2 + (0.8 * (i + 1) / sizes.Count));
        }

        double doubt = here.Length == 0 ? 0 : 2 * here.Max(s => s.Deviation);
        return new([], envelope, outline, [.. windows.OrderByDescending(w => w.WidthMm).ThenByDescending(w => w.AspectPercent)],
            sizes.Count, doubt);
    }

    /// <summary>
    /// From the middle of the tyre's section outward in all directions, by steps
    /// of the room that is left: the room's change is at most the way gone.
    /// </summary>
    private static ProfilePoint[] Envelope(WheelRoom room, in TyreSection tyre, CancellationToken cancel)
    {
        ProfilePoint middle = new(tyre.AxialCentre, tyre.WidestRadius);
        if (!(room.InHand(middle, RayLength) > 0))
        {
            return [];
        }

        var points = new ProfilePoint[Rays];
        for (int i = 0; i < Rays; i++)
        {
            cancel.ThrowIfCancellationRequested();
            var (sin, cos) = Math.SinCos(2 * Math.PI * i / Rays);
            double way = 0, most = sin < 0 ? Math.Min(RayLength, (middle.R - 0.02) / -sin) : RayLength;
            for (int k = 0; k < RayLimit && way < most; k++)
            {
                double left = room.InHand(new ProfilePoint(middle.A + (way * cos), middle.R + (way * sin)), RayLength);
                if (!(left > 3e-4))
                {
                    break;
                }

                way = Math.Min(most, way + left);
            }

            points[i] = new(middle.A + (way * cos), middle.R + (way * sin));
        }

        return points;
    }

    /// <summary>Sizes whose rolling circumference stays within the limit, each on its measuring rim.</summary>
    private static List<SizeWindow> Sizes(CornerPlan plan, in TyreSection tyre, WidestTask task)
    {
        double rimCode = task.RimCode ?? plan.Parts.Rim!.DiameterCode, band = Say.Limit(plan.Limits.CircumferenceChange);
        double present = plan.Parts.TyreSize!.OuterDiameter;
        var list = new List<SizeWindow>();
        for (int width = 5 + (task.LeastWidthMm / 10 * 10); width <= task.MostWidthMm; width += 10)
        {
            for (int aspect = 25; aspect <= 80; aspect += 5)
            {
                double outer = TyreSize.OuterDiameter(width / 1000.0, aspect, rimCode), rolls = (outer / present) - 1;
                if (Math.Abs(rolls) <= band)
                {
                    double rim = RimFit.MeasuringRimCode(width / 1000.0, aspect);
                    string name = string.Create(CultureInfo.InvariantCulture, $"{width}/{aspect} R{rimCode:0.#}");
                    list.Add(new(name, width, aspect, rimCode, rim, 0, 0, outer, rolls));
                }
            }
        }

        return list;
    }

    /// <summary>
    /// The widest run of offsets that clears. What is missing at one offset is the least by which it must change, and what is in hand the
    /// most that it may change without looking again, so nothing wider than the least step is missed.
    /// </summary>
    private static SizeWindow? Window(WheelRoom room, SizeWindow size, double centreNow, double spacer)
    {
        double at = centreNow - OffsetRange, end = centreNow + OffsetRange, from = double.NaN, lastClear = double.NaN;
        (double From, double To) best = (0, -1);
        for (int k = 0; k < 400 && at <= end; k++)
        {
            var (tyre, rim) = SizeWindow.Sections(size.WidthMm, size.AspectPercent, size.RimCode, size.RimWidthCode, at);
            double left = room.InHand(tyre, rim, 0.02);
            if (double.IsNaN(left))
            {
                return null;
            }

            if (left >= 0)
            {
                (from, lastClear) = (double.IsNaN(from) ? at : from, at);
                best = lastClear - from > best.To - best.From ? (from, lastClear) : best;
                at = Math.Abs(at - end) < 1e-9 ? end + 1 : Math.Min(end, at + Math.Max(left, OffsetStep));
            }
            else if (!double.IsNaN(from) && at - lastClear > 1.5 * OffsetStep)
            {
                // Stepped out of the window: back toward its end.
                end = at;
                at = 0.5 * (lastClear + at);
            }
            else if (!double.IsNaN(from))
            {
                // Its end; further on there may be a wider one.
                (from, end) = (double.NaN, centreNow + OffsetRange);
                at += Math.Max(-left, OffsetStep);
            }
            else
            {
                at += Math.Max(-left, OffsetStep);
            }
        }

        // a = spacer - offset: the least a has the greatest offset. Whole millimetres inside.
        int most = (int)Math.Floor((1000 * (spacer - best.From)) + 1e-6), least = (int)Math.Ceiling((1000 * (spacer - best.To)) - 1e-6);
        return best.To >= best.From && most >= least ? size with { LeastOffsetMm = least, MostOffsetMm = most } : null;
    }
}
