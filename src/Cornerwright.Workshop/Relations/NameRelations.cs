using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Kinds = Cornerwright.Workshop.Relations.RelationCatalogue;

namespace Cornerwright.Workshop.Relations;

/// <summary>
/// What a part is called in the trade: "8 kgf/mm, 220 mm", "bar, 22 mm". A number in the name
/// with a unit is one of the part's own; where none is near it, one of the two is a slip.
/// </summary>
internal static class NameRelations
{
    /// <summary>Fields that a name tells, by the part's kind.</summary>
    private static readonly Dictionary<Type, string[]> Told = new()
    {
        [typeof(Spring)] = ["rate", "freeLength"],
        [typeof(Spacer)] = ["thickness"],
        [typeof(BumpStop)] = ["length"],
        [typeof(AntiRollBar)] = ["diameter"],
        [typeof(BarLink)] = ["length"],
        [typeof(Sheet)] = ["thickness"],
    };

    public static void Look(RelationBook book, Part part, string kind)
    {
        if (!Told.TryGetValue(part.GetType(), out string[]? fields))
        {
            return;
        }

        foreach (var said in Quantities(part.Name))
        {
            var shape = RecordShape.Of(part.GetType());
            var told = fields.Select(f => shape.ByName[f]).Where(f => f.Words.Dimension == said.Dimension)
                .Select(f => Num.Of($"parts/{kind}/{part.Id}/{f.Name}", f.Label.ToLowerInvariant(), (Reading?)f.Get(part)))
                .FirstOrDefault(n => n.Given);
            if (told.Given)
            {
                book.Add(Kinds.NameSays, told.Path, told.Si / said.Si, new(0.45, 0.93, 1.07, 2.2),
                    () => $"\"{part.Name}\" says {said.Understood}, and its {told.Label} is {told.Typed}.",
                    told, new Num($"parts/{kind}/{part.Id}/name", "name", part.Name, 0));
            }
        }
    }

    /// <summary>Every number with a unit of length or rate in a name.</summary>
    private static IEnumerable<Quantity> Quantities(string name)
    {
        string[] words = name.Split([' ', ',', ';', '(', ')'], StringSplitOptions.RemoveEmptyEntries);
        for (int i = 0; i < words.Length; i++)
        {
            if (!char.IsAsciiDigit(words[i][0]))
            {
                continue;
            }

            string two = i + 1 < words.Length ? $"{words[i]} {words[i + 1]}" : words[i];
            foreach (var dimension in new[] { Dimension.Length, Dimension.SpringRate })
            {
                if (QuantityText.Parse(two, dimension, "").Try(out var read) || QuantityText.Parse(words[i], dimension, "").Try(out read))
                {
                    yield return read;
                    break;
                }
            }
        }
    }
}
