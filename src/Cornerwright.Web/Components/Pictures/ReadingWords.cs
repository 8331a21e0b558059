using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Fields;

namespace Cornerwright.Web.Components.Pictures;

/// <summary>A path in the car document as people call the field: "frontLeft/springAxisLength" is "front left: spring axis length".</summary>
public static class ReadingWords
{
    /// <summary>The words of a path, or the path itself where it leads to no known field (it may already be words).</summary>
    public static string Of(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        var words = new List<string>();
        RecordShape? shape = RecordShape.Of<Car>();
        foreach (string step in path.Split('/', StringSplitOptions.RemoveEmptyEntries))
        {
            if (shape is not null && shape.ByName.TryGetValue(step, out var field))
            {
                words.Add(field.Words.Label);
                shape = field.Kind is FieldKind.Record or FieldKind.RecordList ? RecordShape.Of(field.ElementType) : null;
            }
            else if (words.Count == 0)
            {
                return path;
            }
            else
            {
                words.Add(step);
            }
        }

        return words.Count == 0 ? path : string.Join(", ", words);
    }
}
