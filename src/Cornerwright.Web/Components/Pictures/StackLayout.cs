using Cornerwright.Workshop.Pictures;

namespace Cornerwright.Web.Components.Pictures;

/// <summary>A piece of the stack in the drawing.</summary>
public sealed record PlacedPiece(int Number, StackPiece Piece, double Top, double Height, double Width, CoilShape? Coil)
{
    public double Middle => Top + (Height / 2);
}

/// <summary>One state of the stack in the drawing; heights downward in drawing units.</summary>
/// <param name="Seat">Height of the upper seat's face.</param>
/// <param name="GapTop">Upper end of what the stack leaves empty; equal to <paramref name="StackTop"/> where it is seated.</param>
public sealed record PlacedState(StackState State, double Middle, double Seat, double GapTop, double StackTop,
    IReadOnlyList<PlacedPiece> Pieces);

/// <summary>The states of one stack side by side, all at one scale, standing on the same perch line.</summary>
public sealed record StackLayout(double PerMetre, double Ground, IReadOnlyList<PlacedState> States)
{
    public const double ColumnWidth = 128;
    public const double Margin = 3;
    private const double Top = 44;
    private const double MostHeight = 270;
    private const double WidestPiece = 58;

    /// <summary>Where a stack's middle stands in its column: numbers at the left, lengths at the right.</summary>
    private const double MiddleShare = 0.45;

    /// <summary>Drawing units from the top edge to below the perch's plate.</summary>
    public double Height => Ground + 30;

    public static StackLayout Of(IReadOnlyList<StackState> states)
    {
        ArgumentNullException.ThrowIfNull(states);
        double tallest = states.Select(s => Math.Max(s.Space, s.Pieces.Sum(p => p.Length))).Where(double.IsFinite)
            .DefaultIfEmpty(0.1).Max();
        double widest = states.SelectMany(s => s.Pieces).Select(p => p.Outer).Where(double.IsFinite).DefaultIfEmpty(0.05).Max();
        double scale = Math.Min(MostHeight / Math.Max(tallest, 0.01), WidestPiece / Math.Max(widest, 0.005));
        double ground = Top + (tallest * scale);
        return new(scale, ground, [.. states.Select((s, i) => Place(s, i, scale, ground))]);
    }

    private static PlacedState Place(StackState state, int column, double scale, double ground)
    {
        double middle = Margin + (column * ColumnWidth) + (ColumnWidth * MiddleShare);
        double y = ground;
        var pieces = new List<PlacedPiece>();
        foreach (var piece in state.Pieces)
        {
            double height = piece.Length * scale;
            double width = piece.Outer * scale;
            y -= height;
            var coil = piece.Coil ? CoilShape.Of(middle, width, y, height, piece.SolidLength * scale) : null;
            pieces.Add(new PlacedPiece(pieces.Count + 1, piece, y, height, width, coil));
        }

        double seat = ground - (state.Space * scale);
        return new(state, middle, seat, state.Gap > 0 ? seat : y, y, pieces);
    }
}
