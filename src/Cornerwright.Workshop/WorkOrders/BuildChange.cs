using Cornerwright.Garage.Access;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Workshop.Comparing;

namespace Cornerwright.Workshop.WorkOrders;

/// <summary>A part or setting of one corner that differs, and what must be undone for it.</summary>
/// <param name="Role">The component that carries it; none for what needs no spanner.</param>
/// <param name="Part">True for another part, false for another setting of the same one.</param>
public sealed record BuildChange(CornerPlace Corner, FieldShape Field, BuildRole Role, Undone State, bool Part, string Before, string After)
{
    /// <summary>Whether the car stands at another height afterwards, so that bonded rubber must be let go.</summary>
    public bool MovesHeight =>
        Field.PropertyName is nameof(CornerBuild.Stack) or nameof(CornerBuild.Perch) or nameof(CornerBuild.PerchHeight)
        or nameof(CornerBuild.BodyHeight) or nameof(CornerBuild.TopMount) or nameof(CornerBuild.Damper);

    public static IReadOnlyList<BuildChange> Between(Car car, Build from, Build to)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(from);
        ArgumentNullException.ThrowIfNull(to);
        var changes = new List<BuildChange>();
        foreach (var corner in Places.Corners)
        {
            foreach (var field in RecordShape.Of<CornerBuild>().Fields)
            {
                string before = PartSwap.Words(car.Parts, field, from.At(corner)), after = PartSwap.Words(car.Parts, field, to.At(corner));
                bool same = Same(field.Get(from.At(corner)), field.Get(to.At(corner)), before, after);
                if (!same)
                {
                    var (role, state, part) = Meaning(field.PropertyName);
                    changes.Add(new BuildChange(corner, field, role, state, part, before, after));
                }
            }
        }

        return changes;
    }

    /// <summary>The field of a corner's build that a component carries; null for none.</summary>
    public static string? FieldOf(BuildRole role) => role switch
    {
        BuildRole.Wheel => nameof(CornerBuild.Wheel),
        BuildRole.Spacer => nameof(CornerBuild.Spacer),
        BuildRole.Stack => nameof(CornerBuild.Stack),
        BuildRole.Perch => nameof(CornerBuild.Perch),
        BuildRole.TopMount => nameof(CornerBuild.TopMount),
        BuildRole.Damper => nameof(CornerBuild.Damper),
        BuildRole.BumpStop => nameof(CornerBuild.BumpStop),
        BuildRole.AntiRollBar => nameof(CornerBuild.AntiRollBar),
        BuildRole.BarLink => nameof(CornerBuild.BarLink),
        _ => null,
    };

    /// <summary>The same part is the same id; the same setting the same number, however typed.</summary>
    private static bool Same(object? a, object? b, string before, string after) => (a, b) switch
    {
        (Garage.Readings.Reading x, Garage.Readings.Reading y) => Math.Abs(x.Si - y.Si) < 1e-9,
        (string x, string y) => x == y,
        (IReadOnlyList<string> x, IReadOnlyList<string> y) => x.SequenceEqual(y, StringComparer.Ordinal),
        _ => before == after,
    };

    private static (BuildRole Role, Undone State, bool Part) Meaning(string field) => field switch
    {
        nameof(CornerBuild.Wheel) or nameof(CornerBuild.Tyre) => (BuildRole.Wheel, Undone.Off, true),
        nameof(CornerBuild.Spacer) => (BuildRole.Spacer, Undone.Off, true),
        nameof(CornerBuild.Stack) => (BuildRole.Stack, Undone.Off, true),
        nameof(CornerBuild.Perch) => (BuildRole.Perch, Undone.Off, true),
        nameof(CornerBuild.TopMount) => (BuildRole.TopMount, Undone.Off, true),
        nameof(CornerBuild.Damper) => (BuildRole.Damper, Undone.Off, true),
        nameof(CornerBuild.BumpStop) => (BuildRole.BumpStop, Undone.Off, true),
        nameof(CornerBuild.AntiRollBar) => (BuildRole.AntiRollBar, Undone.Off, true),
        nameof(CornerBuild.BarLink) => (BuildRole.BarLink, Undone.Off, true),
        nameof(CornerBuild.PerchHeight) => (BuildRole.Perch, Undone.Loose, false),
        nameof(CornerBuild.BodyHeight) => (BuildRole.Damper, Undone.Loose, false),
        nameof(CornerBuild.Slide) => (BuildRole.TopMount, Undone.Loose, false),
        nameof(CornerBuild.ClampCamber) => (BuildRole.Damper, Undone.Loose, false),
        nameof(CornerBuild.Packer) => (BuildRole.BumpStop, Undone.Off, false),
        _ => (BuildRole.None, Undone.Loose, false),
    };
}
