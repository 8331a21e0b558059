using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Learning;

namespace Cornerwright.Workshop.Inputs;

/// <summary>Puts what was learned into the doubt of a corner's numbers.</summary>
/// <remarks>Source: docs/theory/learning.md §3.</remarks>
internal static class LearnedDoubt
{
    /// <summary>Slopes by input (change for one of its standard deviations) become slopes in independent units.</summary>
    /// <param name="table">With its bystanders.</param>
    /// <param name="row">By input of the table.</param>
    public static double[] Slopes(InputTable table, ReadOnlySpan<double> row) => Narrowed(table, row, slopes: true);

    /// <summary>Deviations in independent units become deviations of the inputs, each in its own standard deviations.</summary>
    /// <param name="table">With its bystanders.</param>
    /// <param name="row">By input of the table.</param>
    public static double[] Deviations(InputTable table, ReadOnlySpan<double> row) => Narrowed(table, row, slopes: false);

    private static double[] Narrowed(InputTable table, ReadOnlySpan<double> row, bool slopes)
    {
        double[] result = row.ToArray();
        if (table.Learned is not { } learned)
        {
            return result;
        }

        // The posterior counts in its own units, which are wider for a number that was typed wrong.
        double[] parameters = new double[learned.Parameters.Count];
        for (int i = 0; i < result.Length; i++)
        {
            if (table.Learnt(i) is var p and >= 0)
            {
                parameters[p] = slopes ? result[i] * learned.Loosened[p] : result[i];
            }
        }

        learned.Posterior.Narrow(parameters);
        for (int i = 0; i < result.Length; i++)
        {
            if (table.Learnt(i) is var p and >= 0)
            {
                result[i] = slopes ? parameters[p] : parameters[p] * learned.Loosened[p];
            }
        }

        return result;
    }
}
