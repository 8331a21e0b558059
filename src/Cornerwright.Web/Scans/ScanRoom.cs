using System.Security.Cryptography;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Scans;
using Cornerwright.Storage;
using Cornerwright.Workshop.Scanning;

namespace Cornerwright.Web.Scans;

/// <summary>
/// Scans in use: files once read stay at hand, drawings wait to be fetched, placed scans serve every judgement. Safe from several threads.
/// </summary>
public sealed class ScanRoom(ScanStore store)
{
    /// <summary>Files kept at hand: as many as a person works on at once, and no more points than half a gigabyte.</summary>
    private const int MostFiles = 6;

    private const long MostNumbers = 60_000_000;
    private const long MostDrawingBytes = 256L * 1024 * 1024;
    private const int MostShelves = 8;

    private readonly Lock _door = new();
    private readonly List<(string Hash, RawScan Raw)> _files = [];
    private readonly List<(string Token, byte[] Bytes)> _drawings = [];
    private readonly List<(ShelfKey Key, ScanShelf Shelf)> _shelves = [];

    public ScanStore Store => store;

    /// <summary>What a file holds; read once, then at hand.</summary>
    public Checked<RawScan> Read(string hash, IProgress<double>? progress = null, CancellationToken cancel = default)
    {
        lock (_door)
        {
            int at = _files.FindIndex(f => f.Hash == hash);
            if (at >= 0)
            {
                var found = _files[at];
                _files.RemoveAt(at);
                _files.Add(found);
                return Checked<RawScan>.From(found.Raw);
            }
        }

        var read = store.Read(hash, progress, cancel);
        if (read.Try(out var raw))
        {
            lock (_door)
            {
                _files.RemoveAll(f => f.Hash == hash);
                _files.Add((hash, raw));

                // A file that was missing may be the one that has just come.
                _shelves.RemoveAll(s => s.Shelf.Absent.Count > 0);
                while (_files.Count > 1
                    && (_files.Count > MostFiles || _files.Sum(f => (long)f.Raw.Offsets.Length + f.Raw.Corners.Length) > MostNumbers))
                {
                    _files.RemoveAt(0);
                }
            }
        }

        return read;
    }

    /// <summary>Puts bytes out to be fetched by whoever has the token; old ones go when there are too many.</summary>
    /// <returns>The address.</returns>
    public string Draw(byte[] bytes)
    {
        ArgumentNullException.ThrowIfNull(bytes);
        string token = RandomNumberGenerator.GetHexString(32, lowercase: true);
        lock (_door)
        {
            _drawings.Add((token, bytes));
            while (_drawings.Count > 1 && _drawings.Sum(d => (long)d.Bytes.Length) > MostDrawingBytes)
            {
                _drawings.RemoveAt(0);
            }
        }

        return "/scans/drawing/" + token;
    }

    /// <returns>Null when there is none, or it is too old.</returns>
    public byte[]? Drawing(string token)
    {
        lock (_door)
        {
            return _drawings.FirstOrDefault(d => d.Token == token).Bytes;
        }
    }

    /// <summary>
    /// The placed scans of a car, as a judge needs them: worked out when scans,
    /// present wheel or readings change, not when a slider moves another build.
    /// </summary>
    public ScanShelf ShelfOf(Car car)
    {
        ArgumentNullException.ThrowIfNull(car);
        if (car.Scans.Count == 0)
        {
            return ScanShelf.Empty;
        }

        var key =
            new ShelfKey(car.Scans, car.Parts, car.Build(car.MeasuredBuild), car.FrontLeft, car.FrontRight, car.RearLeft, car.RearRight);
        lock (_door)
        {
            if (_shelves.FirstOrDefault(s => s.Key.Same(key)).Shelf is { } known)
            {
                return known;
            }
        }

        var shelf = ScanShelf.Of(car, hash => Read(hash));
        lock (_door)
        {
            _shelves.Add((key, shelf));
            if (_shelves.Count > MostShelves)
            {
                _shelves.RemoveAt(0);
            }
        }

        return shelf;
    }

    /// <summary>What placing depends on. Records never change, so the same objects give the same shelf.</summary>
    private sealed record ShelfKey(IReadOnlyList<Scan> Scans, object Parts, Build? Measured, Corner FrontLeft, Corner FrontRight,
        Corner RearLeft, Corner RearRight)
    {
        public bool Same(ShelfKey other) =>
            ReferenceEquals(Scans, other.Scans) && ReferenceEquals(Parts, other.Parts) && ReferenceEquals(Measured, other.Measured)
            && ReferenceEquals(FrontLeft, other.FrontLeft) && ReferenceEquals(FrontRight, other.FrontRight)
            && ReferenceEquals(RearLeft, other.RearLeft) && ReferenceEquals(RearRight, other.RearRight);
    }
}
