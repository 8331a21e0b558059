using Cornerwright.Workshop.Pictures;

namespace Cornerwright.Cli.Text;

/// <summary>One state of a spring stack in characters, to scale, as rows from the upper seat down to the perch.</summary>
/// <remarks>
/// A coil spring with room between its coils is drawn /....\ and its mirror by turns, one whose coils touch as #====#, a sheet as
/// [____]. Each piece takes its length over the scale, rounded, but one row at least, so that none is lost.
/// </remarks>
internal static class StackDrawing
{
    /// <summary>Columns of one drawing.</summary>
    public const int Width = 18;

    /// <summary>Length of one row, m, so that the longest state takes at most so many rows.</summary>
    public static double Scale(IEnumerable<StackState> states, int rows)
    {
        double longest = states.Select(s => s.Pieces.Sum(p => p.Length) + s.Gap).Append(0).Max();
        return longest > 0 ? longest / rows : 0;
    }

    /// <param name="state">Pieces from the perch upward.</param>
    /// <param name="scale">Length of one row, m, above 0.</param>
    public static IReadOnlyList<string> Rows(StackState state, double scale)
    {
        var rows = new List<string> { Plate('v') };
        int gap = state.Gap > 0 ? RowsOf(state.Gap, scale) : 0;
        for (int i = 0; i < gap; i++)
        {
            rows.Add(Between(":", i == gap / 2 ? "gap" : "", ":", ' '));
        }

        for (int i = state.Pieces.Count - 1; i >= 0; i--)
        {
            rows.AddRange(Piece(state.Pieces[i], Letter(i), RowsOf(state.Pieces[i].Length, scale)));
        }

        rows.Add(Plate('^'));
        return rows;
    }

    /// <summary>A for the lowest piece, then B and so on.</summary>
    public static string Letter(int index) => index < 26 ? ((char)('A' + index)).ToString() : $"{index + 1}";

    internal static int RowsOf(double length, double scale) =>
        scale > 0 ? Math.Max(1, (int)Math.Round(length / scale, MidpointRounding.AwayFromZero)) : 1;

    private static IEnumerable<string> Piece(StackPiece piece, string letter, int rows)
    {
        for (int i = 0; i < rows; i++)
        {
            string name = i == rows / 2 ? $" {letter} " : "";
            yield return !piece.Coil ? Between("[", name, "]", '_')
                : piece.Shut ? Between("#", name, "#", '=')
                : i % 2 == 0 ? Between("/", name, "\\", '.')
                : Between("\\", name, "/", '.');
        }
    }

    private static string Plate(char mark) => new(mark, Width);

    private static string Between(string left, string middle, string right, char fill)
    {
        int room = Width - 4 - left.Length - right.Length - middle.Length;
        int before = room / 2;
        return $"  {left}{new string(fill, before)}{middle}{new string(fill, room - before)}{right}  ";
    }
}
