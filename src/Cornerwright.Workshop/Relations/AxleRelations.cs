using Cornerwright.Garage.Chassis;
using Kinds = Cornerwright.Workshop.Relations.RelationCatalogue;

namespace Cornerwright.Workshop.Relations;

/// <summary>Track, wheelbase and motion ratios of an axle.</summary>
internal static class AxleRelations
{
    public static void Look(RelationBook book)
    {
        var car = book.Car;
        var wheelbase = Num.Of("wheelbase", "wheelbase", car.Wheelbase);
        var (front, rear) = (Num.Of("front/track", "front track", car.Front.Track), Num.Of("rear/track", "rear track", car.Rear.Track));
        book.Add(Kinds.Track, "axles", front.Si / rear.Si, new(0.6, 0.92, 1.09, 1.7),
            () => $"The front track is {front.Typed}, the rear track {rear.Typed}.", front, rear);
        foreach (var track in new[] { front, rear })
        {
            book.Add(Kinds.Track, track.Path, track.Si / wheelbase.Si, new(0.25, 0.45, 0.75, 1.2),
                () => $"{track.Label} is {track.Typed} on a wheelbase of {wheelbase.Typed}.", track, wheelbase);
        }

        foreach (var place in Places.Corners)
        {
            Ratio(book, place);
        }
    }

    // Round a strut the spring moves nearly as the wheel does; on an arm less.
    private static void Ratio(RelationBook book, CornerPlace place)
    {
        string path = CornerRelations.Path(place);
        var motion = book.Car.At(place).Motion;
        bool apart = book.Car.At(place.Axle()).Layout == SpringLayout.Apart;
        var spring = Num.Of(path + "/motion/springRatio", "motion ratio of the spring", motion.SpringRatio);
        book.Add(Kinds.RatioLayout, spring.Path, spring.Si, apart ? new(0.15, 0.35, 1.12, 1.6) : new(0.2, 0.5, 1.1, 1.6),
            () => $"The {place.Words()} spring's motion ratio is {spring.Typed}.", spring);
        var damper = Num.Of(path + "/motion/damperRatio", "motion ratio of the damper", motion.DamperRatio);
        book.Add(Kinds.RatioLayout, damper.Path, damper.Si, new(0.2, 0.5, 1.12, 1.6),
            () => $"The {place.Words()} damper's motion ratio is {damper.Typed}.", damper);
    }
}
