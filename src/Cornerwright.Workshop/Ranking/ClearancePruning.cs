using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Learning;

namespace Cornerwright.Workshop.Ranking;

/// <summary>
/// What a refused pair tells of others. A wheel set that touches the body within a range of travel touches within every range
/// that holds it; one that touches something fixed to the wheel carrier does so on any springs. docs/theory/ranking.md §5.
/// </summary>
internal sealed class ClearancePruning(SearchSpace space, List<SuspensionCandidate> suspensions)
{
    /// <summary>A gap is searched to about 0.01 mm: nearer to its limit than this nothing is concluded, m.</summary>
    private const double Sure = 5e-5;

    private readonly Dictionary<(int WheelSet, int Mount, bool Left), List<(double Droop, double Bump, string Title)>> _body = [];
    private readonly Dictionary<int, string> _carrier = [];
    private readonly Dictionary<(int WheelSet, int Mount, int Damper), string> _tube = [];
    private readonly ClearancePlan[] _plans =
    [
        CornerPlan.Compile(space.Car, space.Start, space.Axle.Left(), CarLearning.InUse(space.Car)).Clearance,
        CornerPlan.Compile(space.Car, space.Start, space.Axle.Right(), CarLearning.InUse(space.Car)).Clearance,
    ];

    /// <returns>The title of the check that is broken for certain; null where only the judge can tell.</returns>
    public string? Refuses(int s, int w)
    {
        var suspension = suspensions[s];
        if (_carrier.TryGetValue(w, out string? title)
            || _tube.TryGetValue((w, suspension.Choice.Mount, suspension.Choice.Damper), out title))
        {
            return title;
        }

        return OnSide(w, suspension.Choice.Mount, true, suspension.Droop.Left, suspension.Bump.Left)
            ?? OnSide(w, suspension.Choice.Mount, false, suspension.Droop.Right, suspension.Bump.Right);
    }

    /// <summary>Remembers what a refused pair broke.</summary>
    public void Note(int s, int w, IReadOnlyList<BrokenCheck> broken)
    {
        var suspension = suspensions[s];
        foreach (var check in broken)
        {
            if (check.Check is "track-change" or "equal-rolling" && check.ShortBy.Si > 1e-9)
            {
                _carrier.TryAdd(w, check.Title);
            }

            if (check.Clearance < 0 || check.Corner is not { } corner || !(check.ShortBy.Si > Sure))
            {
                continue;
            }

            // Items are named the same in every plan of a corner; only the helper comes and goes.
            string id = check.Check["clear-".Length..];
            bool left = corner.IsLeft();
            var item = _plans[left ? 0 : 1].Items.FirstOrDefault(i => i.Id == id);
            var (droop, bump) = left ? (suspension.Droop.Left, suspension.Bump.Left) : (suspension.Droop.Right, suspension.Bump.Right);
            if (id == "strut-tube")
            {
                _tube.TryAdd((w, suspension.Choice.Mount, suspension.Choice.Damper), check.Title);
            }
            else if (item is { Piece: null, AttachedTo: AttachedTo.Knuckle })
            {
                _carrier.TryAdd(w, check.Title);
            }
            else if (item is { Piece: null, AttachedTo: AttachedTo.Body } && double.IsFinite(droop) && double.IsFinite(bump))
            {
                var key = (w, suspension.Choice.Mount, left);
                if (!_body.TryGetValue(key, out var ranges))
                {
                    _body[key] = ranges = [];
                }

                ranges.RemoveAll(r => r.Droop <= droop && r.Bump >= bump);
                ranges.Add((droop, bump, check.Title));
            }
        }
    }

    private string? OnSide(int w, int mount, bool left, double droop, double bump)
    {
        if (_body.TryGetValue((w, mount, left), out var ranges))
        {
            foreach (var range in ranges)
            {
                if (droop <= range.Droop && bump >= range.Bump)
                {
                    return range.Title;
                }
            }
        }

        return null;
    }
}
