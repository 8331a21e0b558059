using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Learning;
using Cornerwright.Workshop.Weighing;

namespace Cornerwright.Workshop.Judging;

/// <summary>
/// Corners judged lately. Whoever judges the same car again and again (a dragged slider, a page of builds) keeps one and hands it over:
/// only corners that a change reaches are worked out anew. Safe to share among threads.
/// </summary>
public sealed class JudgeMemory
{
    /// <summary>Corners kept of each place: some builds of a car or two, and what a slider just left.</summary>
    private const int MostOfAPlace = 8;

    private readonly Lock _door = new();
    private readonly Dictionary<CornerPlace, LinkedList<(CornerSource Source, JudgedCorner Corner)>> _kept = [];

    /// <summary>Corners worked out so far, those that were remembered not counted.</summary>
    public int WorkedOut { get; private set; }

    internal static JudgedCorner Corner(Car car, Build build, CornerPlace place, JudgeOptions options)
    {
        var source = new CornerSource(car, build, place, CarLearning.InUse(car), options.Scans);
        return options.Memory?.Recall(source) ?? Work(source, options);
    }

    private static JudgedCorner Work(CornerSource source, JudgeOptions options)
    {
        var plan = CornerPlan.Compile(source.Car, source.Build, source.Place, CarLearning.InUse(source.Car));
        var corner = new JudgedCorner(CornerResult.Of(plan, options.Scans?.At(source.Place)));
        options.Memory?.Keep(source, corner);
        return corner;
    }

    private JudgedCorner? Recall(CornerSource source)
    {
        lock (_door)
        {
            var kept = At(source.Place);
            for (var node = kept.First; node is not null; node = node.Next)
            {
                if (node.Value.Source.SameAs(source))
                {
                    kept.Remove(node);
                    kept.AddFirst(node);
                    return node.Value.Corner;
                }
            }
        }

        return null;
    }

    private void Keep(CornerSource source, JudgedCorner corner)
    {
        lock (_door)
        {
            WorkedOut++;
            var kept = At(source.Place);
            kept.AddFirst((source, corner));
            if (kept.Count > MostOfAPlace)
            {
                kept.RemoveLast();
            }
        }
    }

    private LinkedList<(CornerSource Source, JudgedCorner Corner)> At(CornerPlace place)
    {
        if (!_kept.TryGetValue(place, out var kept))
        {
            _kept[place] = kept = [];
        }

        return kept;
    }
}
