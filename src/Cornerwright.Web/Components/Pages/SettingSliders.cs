using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Web.Components.Pages;

/// <summary>The sliders of a build: what can be turned, screwed, slid or packed at each axle or corner.</summary>
public static class SettingSliders
{
    // Reach of a slider where the part names none (common practice, no source), m or rad.
    private const double SeatReach = 0.040;
    private const double PackerReach = 0.030;
    private const double CamberReach = 3 * Math.PI / 180;
    private const double CamberStep = 0.25 * Math.PI / 180;
    private const double Millimetre = 0.001;
    private const double SeatStep = 0.0005;

    /// <param name="car">With its parts.</param>
    /// <param name="build">As it is set now.</param>
    /// <param name="apart">True to set every corner for itself; otherwise both sides of an axle move by the same amount.</param>
    public static IReadOnlyList<SettingSlider> Of(Car car, Build build, bool apart)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(build);
        var sliders = new List<SettingSlider>();
        foreach (var group in Groups(apart))
        {
            sliders.AddRange(Perch(car, build, group));
            sliders.AddRange(Body(car, build, group));
            sliders.AddRange(Packer(car, build, group));
            sliders.AddRange(Spacer(car, build, group));
            sliders.AddRange(Slide(car, build, group));
            sliders.AddRange(Camber(car, build, group));
        }

        return sliders;
    }

    /// <summary>How far a quarter turn moves the perch, m; null for a seat without a thread.</summary>
    public static double? QuarterTurn(Car car, CornerBuild corner)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(corner);
        return Find(car.Parts.Perches, corner.Perch)?.Pitch is { Si: > 0 } pitch ? pitch.Si / 4 : null;
    }

    /// <summary>A setting's reading at a new value; what the old one says of its doubt stays.</summary>
    public static Reading Setting(double si, Unit unit, Reading? before) =>
        new(Quantity.Of(Math.Round(unit.FromSi(si), 3), unit), before?.Tolerance, ReadingSource.Setting);

    private static IEnumerable<(string Name, string Words, CornerPlace[] Corners)> Groups(bool apart) => apart
        ? Places.Corners.Select(c => (c.Words().Replace(' ', '-'), c.Words(), new[] { c }))
        : [("front", "front", [CornerPlace.FrontLeft, CornerPlace.FrontRight]),
            ("rear", "rear", [CornerPlace.RearLeft, CornerPlace.RearRight])];

    private static IEnumerable<SettingSlider> Perch(Car car, Build build, (string Name, string Words, CornerPlace[] Corners) group)
    {
        var first = build.At(group.Corners[0]);
        if (first.PerchHeight is null)
        {
            yield break;
        }

        double? quarter = QuarterTurn(car, first);
        var damper = Find(car.Parts.Dampers, first.Damper);
        double anchor = car.Build(car.MeasuredBuild)?.At(group.Corners[0]).PerchHeight?.Si
            ?? ((Math.Floor(first.PerchHeight.Si / SeatReach) + 0.5) * SeatReach);
        bool threaded = quarter is not null && damper is { ThreadLow: not null, ThreadHigh: not null };
        double low = threaded ? damper!.ThreadLow!.Si : anchor - SeatReach, high = threaded ? damper!.ThreadHigh!.Si : anchor + SeatReach;
        yield return Stepped(build, group, "perch", quarter is null ? "Spring seat" : "Perch height", low, high, quarter ?? SeatStep,
            Units.Millimetre, 1,
            c => c.PerchHeight, (c, r) => c with { PerchHeight = r });
    }

    private static IEnumerable<SettingSlider> Body(Car car, Build build, (string Name, string Words, CornerPlace[] Corners) group)
    {
        var first = build.At(group.Corners[0]);
        if (Find(car.Parts.Dampers, first.Damper) is not { BodyLow: { } low, BodyHigh: { } high } damper
            || (first.BodyHeight ?? damper.BodyHeight) is null)
        {
            yield break;
        }

        // The perch is on the body: both move together, and the preload stays.
        yield return Stepped(build, group, "body", "Body height", low.Si, high.Si, Millimetre, Units.Millimetre, 0,
            c => c.BodyHeight ?? Find(car.Parts.Dampers, c.Damper)?.BodyHeight,
            (c, r) => c with
            {
                BodyHeight = r,
                PerchHeight = c.PerchHeight is { } perch
                    ? Setting(perch.Si + r.Si - (c.BodyHeight ?? damper.BodyHeight)!.Si, Units.Millimetre, perch)
                    : null,
            });
    }

    private static IEnumerable<SettingSlider> Packer(Car car, Build build, (string Name, string Words, CornerPlace[] Corners) group)
    {
        if (Find(car.Parts.BumpStops, build.At(group.Corners[0]).BumpStop) is not null)
        {
            yield return Stepped(build, group, "packer", "Packer on the rod", 0, PackerReach, Millimetre, Units.Millimetre, 0,
                c => c.Packer ?? Zero, (c, r) => c with { Packer = r });
        }
    }

    private static IEnumerable<SettingSlider> Slide(Car car, Build build, (string Name, string Words, CornerPlace[] Corners) group)
    {
        if (Find(car.Parts.TopMounts, build.At(group.Corners[0]).TopMount) is { SlideIn: { } inward, SlideOut: { } outward }
            && inward.Si + outward.Si > 0)
        {
            yield return Stepped(build, group, "slide", "Plate slid inward", -outward.Si, inward.Si, Millimetre, Units.Millimetre, 0,
                c => c.Slide ?? Zero, (c, r) => c with { Slide = r });
        }
    }

    private static IEnumerable<SettingSlider> Camber(Car car, Build build, (string Name, string Words, CornerPlace[] Corners) group)
    {
        if (car.At(group.Corners[0]).Strut is not null)
        {
            yield return Stepped(build, group, "camber", "Camber set at the clamp", -CamberReach, CamberReach, CamberStep, Units.Degree, 2,
                c => c.ClampCamber ?? Level, (c, r) => c with { ClampCamber = r });
        }
    }

    private static IEnumerable<SettingSlider> Spacer(Car car, Build build, (string Name, string Words, CornerPlace[] Corners) group)
    {
        Spacer?[] choices = [null, .. car.Parts.Spacers.Where(s => s.Thickness is not null).OrderBy(s => s.Thickness!.Si)];
        if (choices.Length < 2)
        {
            yield break;
        }

        int at = Math.Max(0, Array.FindIndex(choices, s => (s?.Id ?? "") == build.At(group.Corners[0]).Spacer));
        yield return new SettingSlider("spacer-" + group.Name, "Spacer, " + group.Words, choices[at]?.Name ?? "none", at,
            choices.Length - 1,
            "none", choices[^1]!.Thickness!.Typed,
            (b, step) => group.Corners.Aggregate(b, (all, corner) =>
                all.With(corner, all.At(corner) with { Spacer = choices[Math.Clamp(step, 0, choices.Length - 1)]?.Id ?? "" })));
    }

    private static Reading Zero { get; } = Setting(0, Units.Millimetre, null);
    private static Reading Level { get; } = Setting(0, Units.Degree, null);

    private static SettingSlider Stepped(
        Build build,
        (string Name, string Words, CornerPlace[] Corners) group,
        string name,
        string label,
        double low,
        double high,
        double quantum,
        Unit unit,
        int decimals,
        Func<CornerBuild, Reading?> get,
        Func<CornerBuild, Reading, CornerBuild> set)
    {
        const double Hair = 1e-6;
        double value = get(build.At(group.Corners[0]))!.Si;

        // The steps stand on the value as it is, so that a setting between two steps is not moved by looking at it.
        int below = Math.Max(0, (int)Math.Floor(((value - low) / quantum) + Hair)),
            above = Math.Max(0, (int)Math.Floor(((high - value) / quantum) + Hair));
        double bottom = value - (below * quantum);
        return new SettingSlider(
            $"{name}-{group.Name}", $"{label}, {group.Words}", Shown(), below, below + above,
            QuantityText.Write(bottom, unit, decimals), QuantityText.Write(bottom + ((below + above) * quantum), unit, decimals), Move);

        string Shown()
        {
            string[] texts = [.. group.Corners.Select(c => get(build.At(c))).OfType<Reading>()
                .Select(r => QuantityText.Write(r.Si, unit, decimals)).Distinct()];
            return string.Join(" / ", texts);
        }

        Build Move(Build now, int step)
        {
            if (get(now.At(group.Corners[0])) is not { } present)
            {
                return now;
            }

            double change = bottom + (step * quantum) - present.Si;
            return group.Corners.Aggregate(now, (all, corner) => get(all.At(corner)) is { } reading
                ? all.With(corner, set(all.At(corner), Setting(reading.Si + change, unit, reading)))
                : all);
        }
    }

    private static T? Find<T>(IReadOnlyList<T> parts, string id)
        where T : Part => id.Length == 0 ? null : parts.FirstOrDefault(p => p.Id == id);
}
