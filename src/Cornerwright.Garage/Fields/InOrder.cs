using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Fields;

/// <summary>Readings of which one must be smaller than another.</summary>
internal static class InOrder
{
    public static IEnumerable<Problem> Smaller(string path, Reading? low, Reading? high)
    {
        if (low is not null && high is not null && !(low.Si < high.Si))
        {
            yield return new Problem(path, $"{low.Typed} and {high.Typed}", "the first smaller than the second",
                "They may have been exchanged.");
        }
    }

    public static IEnumerable<Problem> Rising(string path, IEnumerable<Reading?> values)
    {
        double last = double.NegativeInfinity;
        foreach (var value in values)
        {
            if (value is not null && !(value.Si > last))
            {
                yield return new Problem(path, value.Typed, "each larger than the one before",
                    "Sort the rows, or take the double one out.");
            }

            last = value?.Si ?? last;
        }
    }
}
