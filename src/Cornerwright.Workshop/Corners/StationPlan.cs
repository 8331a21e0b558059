using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Parts;
using Cornerwright.Mechanics.Springs;
using Cornerwright.Workshop.Allowing;
using Cornerwright.Workshop.Fitted;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Corners;

/// <summary>One piece of the stack: where its numbers stand in the corner's row of inputs.</summary>
/// <param name="Settles">By how much a new spring's length still shrinks, m; 0 for one that was on the car when it was measured.</param>
internal sealed record StackSlot(Part Part, Handle Free, Handle Solid, Handle Rate, SpringCurve? Curve, double Settles = 0)
{
    public Spring? Spring => Part as Spring;

    public Sheet? Sheet => Part as Sheet;

    public bool Complete => Sheet is not null ? Free.IsGiven
        : Free.IsGiven && Solid.IsGiven && (Rate.IsGiven || Curve is not null);
}

/// <summary>Where the numbers of a corner's spring, damper and stop stand in its row of inputs.</summary>
internal sealed class StationPlan
{
    public required Handle SeatDrop { get; init; }
    public required Handle RodDrop { get; init; }
    public required Handle Perch { get; init; }
    public required Handle Body { get; init; }
    public required Handle RodOpen { get; init; }
    public required Handle RodClosed { get; init; }
    public required Handle RodForce { get; init; }
    public required Handle StopLength { get; init; }
    public required Handle StopSpent { get; init; }
    public required SpringCurve? StopCurve { get; init; }
    public required Handle Packer { get; init; }
    public required Handle Unsprung { get; init; }
    public required Handle DroopLimit { get; init; }
    public required Handle Metal { get; init; }
    public required IReadOnlyList<StackSlot> Stack { get; init; }
    public required double? Pitch { get; init; }

    public bool StackComplete => Stack.Count > 0 && Stack.All(s => s.Complete) && Stack.Any(s => s.Spring is not null);

    public static StationPlan Compile(InputTable table, string buildPath, Corner corner, string cornerPath, Garage.Builds.CornerBuild build,
        CornerParts parts, Garage.Cars.Car car, CornerAllowances allowed)
    {
        string mount = "parts/topMounts/" + parts.TopMount?.Id, damper = "parts/dampers/" + parts.Damper?.Id;
        string stop = "parts/bumpStops/" + parts.BumpStop?.Id;
        Handle bodyHeight = table.Add(buildPath + "/bodyHeight", "body height", build.BodyHeight);
        return new StationPlan
        {
            SeatDrop = table.Add(mount + "/seatDrop", "seat drop of the top mount", parts.TopMount?.SeatDrop),
            RodDrop = table.Add(mount + "/rodDrop", "rod drop of the top mount", parts.TopMount?.RodDrop),
            Perch = table.Add(buildPath + "/perchHeight", "perch height", build.PerchHeight),
            Body = bodyHeight.IsGiven ? bodyHeight
                : table.Add(damper + "/bodyHeight", "body height of the damper", parts.Damper?.BodyHeight),
            RodOpen = table.Add(damper + "/rodOpen", "rod showing, pulled out", parts.Damper?.RodOpen),
            RodClosed = table.Add(damper + "/rodClosed", "rod showing, pushed in", parts.Damper?.RodClosed),
            RodForce = table.Add(damper + "/rodForce", "rod force of the damper", parts.Damper?.RodForce),
            StopLength = table.Add(stop + "/length", "length of the bump stop", parts.BumpStop?.Length),
            StopSpent = table.Add(stop + "/spentLength", "spent length of the bump stop", parts.BumpStop?.SpentLength),
            StopCurve = CurveOf(parts.BumpStop),
            Packer = build.Packer is null ? table.Define(buildPath + "/packer", "packer on the rod", 0)
                : table.Add(buildPath + "/packer", "packer on the rod", build.Packer),
            Unsprung = table.Add(cornerPath + "/unsprungMass", "unsprung mass", corner.UnsprungMass),
            DroopLimit = table.Add(cornerPath + "/droopLimit", "droop limit", corner.DroopLimit),
            Metal = table.Add(cornerPath + "/metalContact", "metal contact", corner.MetalContact),
            Stack = [.. parts.Stack.Select(part => Slot(table, part, car, allowed))],
            Pitch = parts.Perch?.Pitch?.Si,
        };
    }

    private static StackSlot Slot(InputTable table, Part part, Garage.Cars.Car car, CornerAllowances allowed)
    {
        if (part is Sheet sheet)
        {
            return new StackSlot(sheet, table.Add($"parts/sheets/{sheet.Id}/thickness", $"thickness of {sheet.Name}", sheet.Thickness),
                Handle.None, Handle.None, null);
        }

        // Two like springs in one stack share their data sheet, so they share its doubt.
        var spring = (Spring)part;
        string path = "parts/springs/" + spring.Id;
        bool settled = car.Build(car.MeasuredBuild) is { } now && IsOn(now, spring) || car.Occasions.Any(o => IsOn(o.Fitted, spring));
        return new StackSlot(
            spring,
            table.AddOffSheet(path + "/freeLength", $"free length of {spring.Name}", spring.FreeLength, allowed.SpringLength),
            table.Add(path + "/solidHeight", $"solid height of {spring.Name}", spring.SolidHeight),
            spring.Curve.Count > 0 ? Handle.None
                : table.AddOffSheet(path + "/rate", $"rate of {spring.Name}", spring.Rate,
                    allowed.SpringRate * Math.Abs(spring.Rate?.Si ?? 0)),
            CurveOf(spring),
            settled || spring.Role != SpringRole.Main ? 0 : allowed.Settling);
    }

    // What was on the car when something was read has stood under load: it has set by then, and its readings hold.
    private static bool IsOn(Garage.Builds.Build build, Spring spring) => Places.Corners.Any(c => build.At(c).Stack.Contains(spring.Id));

    /// <summary>The curve of a progressive spring; null where it has none that can be used.</summary>
    internal static SpringCurve? CurveOf(Spring spring) => CurveOf([.. spring.Curve.Select(p => (p.Deflection?.Si, p.Force?.Si))]);

    private static SpringCurve? CurveOf(BumpStop? stop) =>
        stop is null ? null : CurveOf([.. stop.Curve.Select(p => (p.Deflection?.Si, p.Force?.Si))]);

    private static SpringCurve? CurveOf(IReadOnlyList<(double? Deflection, double? Force)> rows)
    {
        if (rows.Count == 0 || rows.Any(r => r.Deflection is null || r.Force is null))
        {
            return null;
        }

        double[] deflections = [.. rows.Select(r => r.Deflection!.Value)], forces = [.. rows.Select(r => r.Force!.Value)];
        return SpringCurve.FlawOf(deflections, forces).Kind == CurveFlawKind.None ? SpringCurve.Through(deflections, forces) : null;
    }
}
