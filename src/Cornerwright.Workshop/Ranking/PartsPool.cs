using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Parts;

namespace Cornerwright.Workshop.Ranking;

/// <summary>The parts that a search chooses from, kind by kind. A null stands for going without.</summary>
public sealed record PartsPool
{
    public required IReadOnlyList<Spring> Springs { get; init; }
    public required IReadOnlyList<Sheet> Sheets { get; init; }

    /// <summary>
    /// Every stack that the springs and sheets make, from the perch upward; empty where there would be more than <see cref="MostStacks"/>.
    /// </summary>
    public required IReadOnlyList<IReadOnlyList<Part>> Stacks { get; init; }

    /// <summary>How many stacks the springs and sheets make.</summary>
    public required long StackCount { get; init; }

    /// <summary>More stacks than this are counted but not made: they would not fit the memory of a small machine.</summary>
    public const int MostStacks = 500_000;

    public required IReadOnlyList<Perch?> Perches { get; init; }
    public required IReadOnlyList<TopMount?> TopMounts { get; init; }
    public required IReadOnlyList<Damper?> Dampers { get; init; }
    public required IReadOnlyList<BumpStop?> BumpStops { get; init; }
    public required IReadOnlyList<Wheel?> Wheels { get; init; }
    public required IReadOnlyList<Tyre?> Tyres { get; init; }
    public required IReadOnlyList<Spacer?> Spacers { get; init; }

    /// <summary>Choices of stack, perch, mount, damper and stop.</summary>
    public long Suspensions => StackCount * Perches.Count * TopMounts.Count * Dampers.Count * BumpStops.Count;

    /// <summary>Choices of wheel, tyre and spacer.</summary>
    public long WheelSets => (long)Wheels.Count * Tyres.Count * Spacers.Count;

    /// <summary>
    /// Of each kind the parts that the wishes name; where they name none, all on the shelf but those that the car's builds
    /// use at the other axle alone: that is how a rear spring stays out of the front.
    /// </summary>
    public static PartsPool Of(Car car, Wishes wishes)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(wishes);
        var (here, there) = (Used(car, wishes.Axle), Used(car, wishes.Axle == AxlePlace.Front ? AxlePlace.Rear : AxlePlace.Front));
        var (springs, sheets, spacers) = (Pick<Spring>(), Pick<Sheet>(), Pick<Spacer>());
        long stacks = CountStacks(springs, sheets, wishes.Helper);
        return new PartsPool
        {
            Springs = springs,
            Sheets = sheets,
            StackCount = stacks,
            Stacks = stacks > MostStacks ? [] : [.. MakeStacks(springs, sheets, wishes.Helper)],
            Perches = OrNone(Pick<Perch>()),
            TopMounts = OrNone(Pick<TopMount>()),
            Dampers = OrNone(Pick<Damper>()),
            BumpStops = OrNone(Pick<BumpStop>()),
            Wheels = OrNone(Pick<Wheel>()),
            Tyres = OrNone(Pick<Tyre>()),
            Spacers = wishes.OnlyWithSpacer && spacers.Count > 0 ? spacers : WithNone(spacers),
        };

        List<T> Pick<T>()
            where T : Part
        {
            var kind = PartKind.Of<T>();
            var named = (IReadOnlyList<string>)RecordShape.Of<Wishes>().ByName[kind.Name].Get(wishes)!;
            var (usedHere, usedThere) = (Ids(here, kind), Ids(there, kind));
            return [.. kind.On(car.Parts).OfType<T>().Where(p => named.Count > 0 ? named.Contains(p.Id, StringComparer.Ordinal)
                : usedHere.Contains(p.Id) || !usedThere.Contains(p.Id))];
        }
    }

    /// <summary>The parts of one kind that the pool takes into account; empty for a kind that no search chooses.</summary>
    public IEnumerable<Part> Of(PartKind kind)
    {
        ArgumentNullException.ThrowIfNull(kind);
        IEnumerable<Part?> all =
            [.. Springs, .. Sheets, .. Perches, .. TopMounts, .. Dampers, .. BumpStops, .. Wheels, .. Tyres, .. Spacers];
        return all.OfType<Part>().Where(p => p.GetType() == kind.Shape.Type);
    }

    private static List<CornerBuild> Used(Car car, AxlePlace axle) =>
        [.. car.Builds.SelectMany(b => Places.Corners.Where(c => c.Axle() == axle).Select(b.At))];

    private static HashSet<string> Ids(List<CornerBuild> corners, PartKind kind) =>
        new(CornerSlot.Of(kind).SelectMany(slot => corners.SelectMany(slot.Ids)), StringComparer.Ordinal);

    private static IReadOnlyList<T?> WithNone<T>(List<T> parts)
        where T : Part => [null, .. parts];

    private static IReadOnlyList<T?> OrNone<T>(List<T> parts)
        where T : Part => parts.Count > 0 ? parts : WithNone(parts);

    // A main spring alone, or on a helper or tender with each adapter between or none; under each a seat pad, or none.
    private static IEnumerable<IReadOnlyList<Part>> MakeStacks(IReadOnlyList<Spring> springs, IReadOnlyList<Sheet> sheets,
        HelperWish helper)
    {
        List<Sheet?> pads = [null, .. sheets.Where(s => !IsAdapter(s))], adapters = [null, .. sheets.Where(IsAdapter)];
        List<Spring?> helpers = helper == HelperWish.With ? [] : [null];
        helpers.AddRange(helper == HelperWish.Without ? [] : springs.Where(s => s.Role != SpringRole.Main));
        foreach (var main in springs.Where(s => s.Role == SpringRole.Main))
        {
            foreach (var below in helpers)
            {
                foreach (var adapter in below is null ? adapters.Take(1) : adapters)
                {
                    foreach (var pad in pads)
                    {
                        yield return [.. new Part?[] { pad, below, adapter, main }.OfType<Part>()];
                    }
                }
            }
        }
    }

    private static long CountStacks(IReadOnlyList<Spring> springs, IReadOnlyList<Sheet> sheets, HelperWish helper)
    {
        long mains = springs.Count(s => s.Role == SpringRole.Main), helpers = helper == HelperWish.Without ? 0 : springs.Count - mains,
            adapters = sheets.Count(IsAdapter);
        return mains * ((helper == HelperWish.With ? 0 : 1) + (helpers * (1 + adapters))) * (1 + sheets.Count - adapters);
    }

    private static bool IsAdapter(Sheet sheet) => sheet.LowerRegister is not null && sheet.UpperRegister is not null;
}
