using System.Globalization;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Readings;
using Cornerwright.Web.Benches;
using Cornerwright.Web.Components.Entry;
using Cornerwright.Workshop.Comparing;

namespace Cornerwright.Web.Components.Pages;

/// <summary>One build: what is bolted to each corner and how it is set.</summary>
public partial class BuildEditor
{
    private static readonly string[] Names = [nameof(Build.Name), nameof(Build.Note)];
    private static readonly string[] WheelParts = Of(SlotGroup.Wheel);

    /// <summary>One part each: the stack has an editor of its own.</summary>
    private static readonly string[] StationParts = Of(SlotGroup.Station);

    private static readonly string[] Settings = Of(SlotGroup.Setting);

    private static string[] Of(SlotGroup group) =>
        [.. CornerSlot.All.Where(s => s.About.Group == group && s.Field.Kind != FieldKind.TextList).Select(s => s.Field.PropertyName)];

    /// <summary>Parts and settings alike on both sides, as they would be written.</summary>
    private bool Same(Build build, CornerPlace place) => CornerSlot.All.All(s =>
        s.Written(Car.Parts, build.At(place)) == s.Written(Car.Parts, build.At(BuildsOf.OtherSide(place))));

    private string Price(Build build)
    {
        var price = BuildPrice.Of(Car, build);
        string sum = price.ToBuy.ToString("0.00", CultureInfo.InvariantCulture);
        string missing = price.Unpriced.Count > 0 ? $", {price.Unpriced.Count} without a price" : "";
        return $"to buy: {sum} {Car.Currency}".TrimEnd() + missing;
    }

    private string InheritedLimit(FieldShape field, Build build) =>
        field.Get(Car.Limits) is Reading own ? "the car's: " + ReadingDraft.Used(field, own)
        : AllowanceWords.Limit(field, Car, build);

    private void MendBuild(string words, Func<object?, object?> rework)
    {
        string id = BuildId ?? "";
        Bench.Apply(words, car => BuildsOf.Change(car, id, b => (Build)rework(b)!));
    }

    private void MendCorner(CornerPlace place, string words, Func<object?, object?> rework) =>
        MendBuild(words, b => ((Build)b!).With(place, (CornerBuild)rework(((Build)b).At(place))!));

    private void CopyAcross(CornerPlace place) => MendBuild(
        $"{place.Words()} same as {BuildsOf.OtherSide(place).Words()}",
        b => ((Build)b!).With(place, ((Build)b).At(BuildsOf.OtherSide(place))));
}
