using System.Collections;
using Cornerwright.Garage.Access;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Web.Components.Entry;

/// <summary>
/// What a folded entry of a list holds, in one line: its first readings with their doubt, and how many entries lie in it.
/// </summary>
public static class ItemDigest
{
    private const int MostReadings = 4;

    public static string Of(object item)
    {
        ArgumentNullException.ThrowIfNull(item);
        return item switch
        {
            Gap gap => Join([Used(gap, nameof(Gap.Distance)), ChoiceWords.Of(gap.Direction) + " from the " + ChoiceWords.Of(gap.From),
                Used(gap, nameof(Gap.Steer)) is { Length: > 0 } steer ? "steered " + steer : ""]),
            Obstacle thing => Join(["with " + ChoiceWords.Of(thing.AttachedTo), Count(thing.Gaps.Count, "gap"), Least(thing)]),
            Fastener bolt =>
                Join([bolt.Count is { } n ? FormattableString.Invariant($"{n} pieces") : "", bolt.Drive, TorqueSense.Words(bolt)]),
            Prerequisite before => before.Why,
            Carried => "",
            Hazard hazard => Shortened(hazard.Sentence),
            _ => Plain(item),
        };
    }

    private static string Shortened(string text) => text.Length <= 70 ? text : string.Concat(text.AsSpan(0, 67), "…");

    private static string Plain(object item)
    {
        var fields = RecordShape.Of(item.GetType()).Fields;
        var given = fields.Where(f => f.Kind == FieldKind.Reading && f.Get(item) is not null).ToList();
        var words = given.Take(MostReadings).Select(f => ReadingDraft.Used(f, (Reading)f.Get(item)!)).ToList();
        if (given.Count > MostReadings)
        {
            words.Add($"{given.Count - MostReadings} more");
        }

        words.AddRange(fields.Where(f => f.Kind == FieldKind.RecordList).Select(f => Entries(f, item)).Where(w => w.Length > 0));
        return words.Count > 0 ? string.Join(" · ", words) : "nothing given yet";
    }

    private static string Entries(FieldShape field, object item)
    {
        int count = ((IEnumerable)field.Get(item)!).Cast<object>().Count();
        return count == 0 ? "" : $"{field.Label.ToLowerInvariant()}: {count}";
    }

    private static string Least(Obstacle thing) =>
        thing.Gaps.Where(g => g.Distance is not null).MinBy(g => g.Distance!.Si) is { } nearest
            ? "nearest " + Used(nearest, nameof(Gap.Distance)) : "";

    private static string Used(Gap gap, string property) =>
        RecordShape.Of<Gap>().Fields.First(f => f.PropertyName == property) is var field && field.Get(gap) is Reading reading
            ? ReadingDraft.Used(field, reading) : "";

    private static string Count(int count, string what) => count == 1 ? "1 " + what : $"{count} {what}s";

    private static string Join(IEnumerable<string> words) => string.Join(" · ", words.Where(w => w.Length > 0));
}
