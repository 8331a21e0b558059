using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Findings;
using Kinds = Cornerwright.Workshop.Relations.RelationCatalogue;

namespace Cornerwright.Workshop.Relations;

/// <summary>What the wheels carry: sides, axles and cases of loading beside each other.</summary>
internal static class LoadRelations
{
    public static void Look(RelationBook book)
    {
        var cases = book.Car.LoadCases;
        for (int i = 0; i < cases.Count; i++)
        {
            var load = cases[i];
            foreach (var axle in new[] { AxlePlace.Front, AxlePlace.Rear })
            {
                var (left, right) = axle == AxlePlace.Front ? (Of(load, CornerPlace.FrontLeft), Of(load, CornerPlace.FrontRight))
                    : (Of(load, CornerPlace.RearLeft), Of(load, CornerPlace.RearRight));
                book.Add(Kinds.CaseSides, $"{load.Id}/{axle.Words()}", left.Si / right.Si, new(0.3, 0.82, 1.22, 3.3),
                    () => $"In load case {load.Name} the {axle.Words()} axle carries {left.Typed} left and {right.Typed} right.", left,
                        right);
            }

            Axles(book, load);
            if (i > 0)
            {
                Beside(book, cases[0], load);
            }
        }

        foreach (var place in Places.Corners)
        {
            Unsprung(book, place);
        }
    }

    private static void Axles(RelationBook book, LoadCase load)
    {
        Num[] all = [.. Places.Corners.Select(p => Of(load, p))];
        double total = all.Sum(n => n.Si), front = (all[0].Si + all[1].Si) / total;
        book.Add(Kinds.CaseAxles, load.Id + "/share", front, new(0.15, 0.34, 0.7, 0.88),
            () => $"In load case {load.Name} the front carries {Say.Percent(front)} of the car.", all);
        book.Add(Kinds.CaseAxles, load.Id + "/total", total, new(200, 500, 3600, 9000),
            () => $"In load case {load.Name} the car weighs {Say.Kg(total)}.", all);
    }

    private static void Beside(RelationBook book, LoadCase first, LoadCase load)
    {
        foreach (var place in Places.Corners)
        {
            var (here, there) = (Of(load, place), Of(first, place));
            book.Add(Kinds.CaseOthers, $"{load.Id}/{CornerRelations.Path(place)}", here.Si / there.Si, new(0.25, 0.6, 1.8, 4),
                () => $"The {place.Words()} wheel carries {here.Typed} in load case {load.Name} and {there.Typed} in {first.Name}.",
                    here, there);
        }
    }

    private static void Unsprung(RelationBook book, CornerPlace place)
    {
        if (Measured(book.Car) is { } load)
        {
            string path = CornerRelations.Path(place);
            var (carried, unsprung) = (Of(load, place), Num.Of(path + "/unsprungMass", "unsprung mass", book.Car.At(place).UnsprungMass));
            book.Add(Kinds.UnsprungShare, path, unsprung.Si / carried.Si, new(0.01, 0.04, 0.2, 0.6),
                () => $"{unsprung.Typed} of the {carried.Typed} that the {place.Words()} wheel carries are said to be unsprung.",
                unsprung, carried);
        }
    }

    /// <summary>The case in which the car was measured; the first where nobody said.</summary>
    public static LoadCase? Measured(Car car) => car.LoadCases.FirstOrDefault(c => c.Id == car.MeasuredLoadCase)
        ?? (car.LoadCases.Count > 0 ? car.LoadCases[0] : null);

    public static Num Of(LoadCase load, CornerPlace place) =>
        Num.Of($"loadCases/{load.Id}/{CornerRelations.Path(place)}", $"load {place.Words()}", load.At(place));
}
