using System.Text;

namespace Cornerwright.Web.Components.Pictures;

/// <summary>A coil spring seen from the side, between two heights of a drawing.</summary>
/// <param name="Front">Path of the wire in front, to be stroked <paramref name="Wire"/> wide.</param>
/// <param name="Back">Path of the wire behind.</param>
/// <param name="Wire">Drawing units.</param>
public sealed record CoilShape(string Front, string Back, double Wire)
{
    /// <summary>A road spring's wire against its coil: about an eighth (common practice, no source). Only the picture uses it.</summary>
    private const double UsualWireShare = 0.125;

    private const int MostCoils = 16;

    /// <param name="middle">Of the coil, drawing units.</param>
    /// <param name="outer">Outer diameter, drawing units.</param>
    /// <param name="top">Upper end in the drawing.</param>
    /// <param name="length">Now, drawing units.</param>
    /// <param name="solid">With all coils touching, drawing units; the coils drawn fill just this.</param>
    public static CoilShape Of(double middle, double outer, double top, double length, double solid)
    {
        double thickness = Math.Min(outer * UsualWireShare, Math.Max(solid, 2) / 2);
        int coils = Math.Clamp((int)Math.Round((Math.Max(solid, 2) / Math.Max(thickness, 0.5)) - 1), 2, MostCoils);
        double wire = Math.Min(Math.Max(solid, 2) / (coils + 1), Math.Max(length, 1) / (coils + 1));
        double pitch = (Math.Max(length, wire) - wire) / coils;
        double left = middle - (outer / 2) + (wire / 2), right = middle + (outer / 2) - (wire / 2);
        var front = new StringBuilder();
        var back = new StringBuilder();
        for (int i = 0; i < coils; i++)
        {
            double y = top + (wire / 2) + (i * pitch);
            front.Append('M').Append(Px.Of(left)).Append(' ').Append(Px.Of(y)).Append('L').Append(Px.Of(right)).Append(' ')
                .Append(Px.Of(y + (pitch / 2)));
            back.Append('M').Append(Px.Of(right)).Append(' ').Append(Px.Of(y + (pitch / 2))).Append('L').Append(Px.Of(left)).Append(' ')
                .Append(Px.Of(y + pitch));
        }

        // The two ends lie flat on their seats.
        double end = top + (wire / 2) + (coils * pitch);
        front.Append('M').Append(Px.Of(left)).Append(' ').Append(Px.Of(top + (wire / 2))).Append('H').Append(Px.Of(right));
        front.Append('M').Append(Px.Of(left)).Append(' ').Append(Px.Of(end)).Append('H').Append(Px.Of(right));
        return new(front.ToString(), back.ToString(), wire);
    }
}
