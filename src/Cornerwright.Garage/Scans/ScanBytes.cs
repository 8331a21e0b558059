using System.Buffers.Text;
using System.Text;

namespace Cornerwright.Garage.Scans;

/// <summary>The bytes of a scan file in order: a small window of them in memory, progress told, cancelling heard.</summary>
internal sealed class ScanBytes
{
    private const int Window = 64 * 1024;

    /// <summary>Longest word of a text format, bytes: a number has some 20.</summary>
    private const int LongestWord = 200;

    private readonly Stream _stream;
    private readonly IProgress<double>? _progress;
    private readonly CancellationToken _cancel;
    private readonly byte[] _window;
    private readonly byte[] _word = new byte[LongestWord];
    private int _at, _end;
    private long _before;   // position in the file of the window's first byte
    private long _told;

    public ScanBytes(Stream stream, IProgress<double>? progress, CancellationToken cancel)
    {
        (_stream, _progress, _cancel) = (stream, progress, cancel);
        Length = stream.Length;
        _window = new byte[(int)Math.Clamp(Length, 16, Window)];
    }

    public long Length { get; }

    public long Position => _before + _at;

    public long Left => Length - Position;

    /// <summary>The next byte without taking it; -1 at the end.</summary>
    public int Peek() => _at < _end || Fill() ? _window[_at] : -1;

    /// <summary>The next byte; -1 at the end.</summary>
    public int Next() => _at < _end || Fill() ? _window[_at++] : -1;

    public void Seek(long position)
    {
        _stream.Position = position;
        (_before, _at, _end) = (position, 0, 0);
    }

    /// <summary>As many bytes as the span has room for.</summary>
    /// <exception cref="ScanFault">The file ends before.</exception>
    public void Take(Span<byte> into, string where)
    {
        while (into.Length > 0)
        {
            if (_at == _end && !Fill())
            {
                throw ScanFault.Ends(where);
            }

            int count = Math.Min(into.Length, _end - _at);
            _window.AsSpan(_at, count).CopyTo(into);
            into = into[count..];
            _at += count;
        }
    }

    public void Skip(long count, string where)
    {
        if (count > Left)
        {
            throw ScanFault.Ends(where);
        }

        if (count <= _end - _at)
        {
            _at += (int)count;
        }
        else
        {
            Seek(Position + count);
            Tell();
        }
    }

    /// <summary>The next word between blanks, of whatever line; empty at the end of the file.</summary>
    public ReadOnlySpan<byte> Word(string where)
    {
        int next = Next();
        while (next is ' ' or '\t' or '\r' or '\n')
        {
            next = Next();
        }

        int length = 0;
        for (; next >= 0 && next is not (' ' or '\t' or '\r' or '\n'); next = Next())
        {
            if (length == LongestWord)
            {
                throw ScanFault.At(where, Encoding.Latin1.GetString(_word.AsSpan(0, 40)), $"words of at most {LongestWord} characters",
                    "This is no text file of its kind: export it again.");
            }

            _word[length++] = (byte)next;
        }

        return _word.AsSpan(0, length);
    }

    /// <summary>The next word of this line; empty at its end, which is not taken.</summary>
    public ReadOnlySpan<byte> WordOfLine(string where)
    {
        while (Peek() is ' ' or '\t' or '\r' or '\\')
        {
            // A backslash before the line's end joins it to the next.
            if (Next() == '\\')
            {
                while (Peek() is ' ' or '\t' or '\r')
                {
                    Next();
                }

                if (Peek() == '\n')
                {
                    Next();
                }
            }
        }

        int length = 0;
        for (int next = Peek(); next >= 0 && next is not (' ' or '\t' or '\r' or '\n' or '\\'); next = Peek())
        {
            if (length == LongestWord)
            {
                throw ScanFault.At(where, Encoding.Latin1.GetString(_word.AsSpan(0, 40)), $"words of at most {LongestWord} characters",
                    "This is no text file of its kind: export it again.");
            }

            _word[length++] = (byte)Next();
        }

        return _word.AsSpan(0, length);
    }

    /// <summary>Passes everything up to and with the line's end. False at the end of the file.</summary>
    public bool EndLine()
    {
        int next = Next();
        while (next is >= 0 and not '\n')
        {
            next = Next();
        }

        return next >= 0;
    }

    /// <summary>A line without its end, for headers. Null at the end of the file.</summary>
    public string? Line(int longest, string where)
    {
        if (Peek() < 0)
        {
            return null;
        }

        var line = new StringBuilder();
        for (int next = Next(); next is >= 0 and not '\n'; next = Next())
        {
            if (next == '\r')
            {
                if (Peek() == '\n')
                {
                    Next();
                }

                break;
            }

            if (line.Length == longest)
            {
                throw ScanFault.At(where, line.ToString(), $"lines of at most {longest} characters",
                    "This is no header of its kind: export the file again.");
            }

            line.Append((char)next);
        }

        return line.ToString();
    }

    /// <summary>A finite number from a whole word.</summary>
    public static double Number(ReadOnlySpan<byte> word, string where)
    {
        if (word.IsEmpty)
        {
            throw ScanFault.Ends(where);
        }

        // A plus sign is common in text scans, and the framework's reader takes it.
        return Utf8Parser.TryParse(word, out double value, out int used) && used == word.Length
            ? value
            : throw ScanFault.At(where, Encoding.Latin1.GetString(word), "a number", "The file is damaged there: export it again.");
    }

    private bool Fill()
    {
        _cancel.ThrowIfCancellationRequested();
        _before += _end;
        (_at, _end) = (0, 0);
        _end = _stream.Read(_window, 0, _window.Length);
        Tell();
        return _end > 0;
    }

    private void Tell()
    {
        const int Steps = 200;
        if (_progress is not null && Length > 0 && _before - _told >= Length / Steps)
        {
            _told = _before;
            _progress.Report((double)_before / Length);
        }
    }
}
