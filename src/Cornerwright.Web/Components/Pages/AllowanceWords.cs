using Cornerwright.Garage.Allowing;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Readings;
using Cornerwright.Web.Components.Entry;

namespace Cornerwright.Web.Components.Pages;

/// <summary>What the forms of limits and allowances say of a line that was left empty.</summary>
internal static class AllowanceWords
{
    private static readonly string[] Older = [nameof(Limits.TyreGrowth), nameof(Limits.TyreShift)];

    /// <summary>Limits that only older files have: shown where one is given, left out elsewhere.</summary>
    public static IReadOnlyList<string>? LeftOut(Limits limits) =>
        limits.TyreGrowth is null && limits.TyreShift is null ? Older : null;

    /// <summary>Of a car: the default for how it is driven, and where that comes from.</summary>
    public static string Inherited(FieldShape field, Car car) => Default(field, AllowancesInForce.UseOf(car, new Build()));

    /// <summary>Of a build: the car's own, else the default.</summary>
    public static string Inherited(FieldShape field, Car car, Build build) =>
        field.Get(car.Allowances) is Reading own ? "the car's: " + ReadingDraft.Used(field, own)
        : Default(field, AllowancesInForce.UseOf(car, build));

    /// <summary>Likewise of a limit.</summary>
    public static string Limit(FieldShape field, Car car, Build build) =>
        field.Get(Limits.For(AllowancesInForce.UseOf(car, build))) is Reading usual ? "default " + ReadingDraft.Used(field, usual)
            : "no limit unless one is typed";

    private static string Default(FieldShape field, CarUse use) => field.Get(AllowanceDefaults.For(use)) is Reading usual
        ? $"default {ReadingDraft.Used(field, usual)}. {Sentence(AllowanceDefaults.SourceOf(field))}" : "";

    private static string Sentence(string source) => char.ToUpperInvariant(source[0]) + source[1..] + ".";
}
