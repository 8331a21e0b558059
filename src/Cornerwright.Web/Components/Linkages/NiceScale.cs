namespace Cornerwright.Web.Components.Linkages;

/// <summary>A scale whose marks fall on round numbers.</summary>
/// <param name="Least">At or below the least value.</param>
/// <param name="Most">At or above the greatest value.</param>
/// <param name="Step">Between two marks: 1, 2 or 5 times a power of ten.</param>
public readonly record struct NiceScale(double Least, double Most, double Step)
{
    private const int MostMarks = 40;

    /// <summary>Decimals that its marks need.</summary>
    public int Decimals => Math.Clamp((int)Math.Ceiling(-Math.Log10(Step) - 1e-9), 0, 6);

    /// <summary>Every mark, from below.</summary>
    public IEnumerable<double> Marks
    {
        get
        {
            for (int i = 0; i <= MostMarks && Least + (i * Step) <= Most + (1e-9 * Step); i++)
            {
                yield return Least + (i * Step);
            }
        }
    }

    /// <param name="least">Finite.</param>
    /// <param name="most">Finite; made larger where it is not above <paramref name="least"/> by <paramref name="narrowest"/>.</param>
    /// <param name="narrowest">The span below which a line that is level is to look level, above 0.</param>
    /// <param name="marks">About so many marks.</param>
    public static NiceScale Over(double least, double most, double narrowest, int marks = 5)
    {
        if (!(most - least >= narrowest))
        {
            double middle = 0.5 * (least + most);
            (least, most) = (middle - (0.5 * narrowest), middle + (0.5 * narrowest));
        }

        double raw = (most - least) / marks, power = Math.Pow(10, Math.Floor(Math.Log10(raw))), share = raw / power;
        double step = (share <= 1 ? 1 : share <= 2 ? 2 : share <= 5 ? 5 : 10) * power;
        return new(Math.Floor((least / step) + 1e-9) * step, Math.Ceiling((most / step) - 1e-9) * step, step);
    }
}
