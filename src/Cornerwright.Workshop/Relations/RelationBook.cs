using Cornerwright.Garage.Cars;

namespace Cornerwright.Workshop.Relations;

/// <summary>Gathers what does not go together; what is fine only counts.</summary>
internal sealed class RelationBook(Car car)
{
    private readonly List<Relation> _found = [];

    public Car Car { get; } = car;

    /// <summary>How many relations were looked at.</summary>
    public int Looked { get; private set; }

    public IReadOnlyList<Relation> Found => _found;

    /// <summary>One relation; left out where a number that it ties was not typed.</summary>
    /// <param name="kind">Of which kind.</param>
    /// <param name="place">Of what: a part's or field's path.</param>
    /// <param name="value">What is compared, in the unit of the bands.</param>
    /// <param name="bands">What is fine and what cannot be.</param>
    /// <param name="sentence">What does not go together; only asked where it is not fine.</param>
    /// <param name="ties">The numbers in it.</param>
    public void Add(RelationKind kind, string place, double value, Bands bands, Func<string> sentence, params ReadOnlySpan<Num> ties)
    {
        foreach (var tie in ties)
        {
            if (!tie.Given)
            {
                return;
            }
        }

        Looked++;
        var band = bands.Of(value);
        if (band == Band.Fine)
        {
            return;
        }

        string id = $"{kind.Id}/{place}";
        var tied = new Tie[ties.Length];
        for (int i = 0; i < tied.Length; i++)
        {
            tied[i] = new Tie(ties[i].Path, ties[i].Label, ties[i].Typed);
        }

        if (_found.Any(r => r.Id == id))
        {
            return;
        }

        _found.Add(new Relation
        {
            Id = id, Kind = kind.Id, Band = band, Sentence = sentence(), Ties = tied,
            Why = Confirming.WhyOf(Car, id, tied),
        });
    }
}
