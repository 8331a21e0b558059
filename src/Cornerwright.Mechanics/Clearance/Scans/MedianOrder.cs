using System.Runtime.InteropServices;

namespace Cornerwright.Mechanics.Clearance.Scans;

/// <summary>A primitive's centre and number while they are being sorted.</summary>
[StructLayout(LayoutKind.Sequential)]
internal struct Placed
{
    public float X;
    public float Y;
    public float Z;
    public int Number;
}

/// <summary>Orders places so that every group of eight, of 64, of 512 ... is a compact piece of space.</summary>
/// <remarks>
/// Halves the places at the middle of the longest side, again and again, at multiples of powers of two, so that the tree needs no pointers
/// (a balanced k-d order: Bentley, Comm. ACM 18 (1975) 509). Each halving is the selection of Floyd and Rivest, Comm.
/// ACM 18 (1975) 165, 173.
/// Source: those papers.
/// </remarks>
internal static class MedianOrder
{
    public static void Arrange(Span<Placed> places)
    {
        int size = 8;
        while (size < places.Length)
        {
            size *= 2;
        }

        Halve(places, size);
    }

    private static void Halve(Span<Placed> places, int size)
    {
        while (places.Length > 8)
        {
            int half = size / 2;
            if (half < places.Length)
            {
                Select(places, half, LongestSide(places));
                Halve(places[half..], half);
                places = places[..half];
            }

            size = half;
        }
    }

    private static int LongestSide(ReadOnlySpan<Placed> places)
    {
        float x0 = float.PositiveInfinity, y0 = x0, z0 = x0, x1 = float.NegativeInfinity, y1 = x1, z1 = x1;
        foreach (ref readonly Placed p in places)
        {
            (x0, x1) = (MathF.Min(x0, p.X), MathF.Max(x1, p.X));
            (y0, y1) = (MathF.Min(y0, p.Y), MathF.Max(y1, p.Y));
            (z0, z1) = (MathF.Min(z0, p.Z), MathF.Max(z1, p.Z));
        }

        float x = x1 - x0, y = y1 - y0, z = z1 - z0;
        return x >= y && x >= z ? 0 : y >= z ? 1 : 2;
    }

    private static void Select(Span<Placed> places, int middle, int side)
    {
        switch (side)
        {
            case 0:
                Select<AlongX>(places, 0, places.Length - 1, middle);
                break;
            case 1:
                Select<AlongY>(places, 0, places.Length - 1, middle);
                break;
            default:
                Select<AlongZ>(places, 0, places.Length - 1, middle);
                break;
        }
    }

    private static void Select<TKey>(Span<Placed> a, int left, int right, int k)
        where TKey : struct, IKey
    {
        while (right > left)
        {
            // A good pivot first: the middle of a sample near the place sought.
            if (right - left > 600)
            {
                double n = right - left + 1, i = k - left + 1, z = Math.Log(n), s = 0.5 * Math.Exp(2 * z / 3);
                double sd = 0.5 * Math.Sqrt(z * s * (n - s) / n) * Math.Sign(i - (n / 2));
                Select<TKey>(a, Math.Max(left, (int)(k - (i * s / n) + sd)), Math.Min(right, (int)(k + ((n - i) * s / n) + sd)), k);
            }

            float t = TKey.Of(a[k]);
            int up = left, down = right;
            (a[left], a[k]) = (a[k], a[left]);
            if (TKey.Of(a[right]) > t)
            {
                (a[left], a[right]) = (a[right], a[left]);
            }

            while (up < down)
            {
                (a[up], a[down]) = (a[down], a[up]);
                up++;
                down--;
                while (TKey.Of(a[up]) < t)
                {
                    up++;
                }

                while (TKey.Of(a[down]) > t)
                {
                    down--;
                }
            }

            if (TKey.Of(a[left]) == t)
            {
                (a[left], a[down]) = (a[down], a[left]);
            }
            else
            {
                down++;
                (a[down], a[right]) = (a[right], a[down]);
            }

            left = down <= k ? down + 1 : left;
            right = k <= down ? down - 1 : right;
        }
    }

    private interface IKey
    {
        static abstract float Of(in Placed place);
    }

    private readonly struct AlongX : IKey
    {
        public static float Of(in Placed place) => place.X;
    }

    private readonly struct AlongY : IKey
    {
        public static float Of(in Placed place) => place.Y;
    }

    private readonly struct AlongZ : IKey
    {
        public static float Of(in Placed place) => place.Z;
    }
}
