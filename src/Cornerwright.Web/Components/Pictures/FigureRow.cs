using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Findings;

namespace Cornerwright.Web.Components.Pictures;

/// <summary>A row of the figures: what it is, now and then. Left and right share a row where nothing tells them apart.</summary>
public sealed record FigureRow(string Key, string Title, string Where, string Present, string Proposed, string Doubt, string Change,
    string Note)
{
    public static IReadOnlyList<FigureRow> Of(IReadOnlyList<Figure>? present, IReadOnlyList<Figure> proposed)
    {
        ArgumentNullException.ThrowIfNull(proposed);
        var before = (present ?? []).GroupBy(f => f.Key).ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);
        var rows = proposed.Select(f => (Figure: f, Row: Row(f, before.GetValueOrDefault(f.Key))));

        // Title by title, in the order in which the titles first come.
        return [.. rows.GroupBy(r => r.Figure.Title).SelectMany(title => Joined([.. title]))];
    }

    private static FigureRow Row(Figure figure, Figure? before) => new(
        figure.Key,
        figure.Title,
        figure.Where,
        before?.Value.Text ?? "–",
        figure.Value.Text,
        figure.Doubt is { Si: > 0 } doubt ? doubt.Number : "",
        before is null ? "–" : Difference(before.Value, figure.Value),
        figure.Note);

    private static string Difference(Measure before, Measure after)
    {
        var change = after.With(after.Si - before.Si);
        return change.Number.Trim('0', '.', '-').Length == 0 ? "same" : (change.Si > 0 ? "+" : "") + change.Text;
    }

    private static IEnumerable<FigureRow> Joined(IReadOnlyList<(Figure Figure, FigureRow Row)> rows)
    {
        foreach (var axle in rows.GroupBy(r => r.Figure.Corner?.Axle()))
        {
            var list = axle.ToList();
            if (axle.Key is { } place && list.Count == 2
                && list[0].Row with { Key = "", Where = "" } == list[1].Row with { Key = "", Where = "" })
            {
                yield return list[0].Row with { Where = place.Words() + ", both" };
            }
            else
            {
                foreach (var (_, row) in list)
                {
                    yield return row;
                }
            }
        }
    }
}
