using System.Text;

namespace Cornerwright.Garage.Files;

/// <summary>Takes a CSV text apart, cell by cell, strictly: a quote either encloses a whole cell or is a problem.</summary>
/// <remarks>
/// Source: RFC 4180, section 2; line ends may be CR LF, LF or CR. Looks at every character once. Blanks between a
/// delimiter and a quote are refused as the RFC has it, because some programs drop them and some keep the quote.
/// </remarks>
internal sealed class CsvScanner(string text, char delimiter)
{
    private readonly StringBuilder _cell = new();
    private int _at;

    /// <summary>Line at which the next record begins, from 1.</summary>
    public int Line { get; private set; } = 1;

    /// <summary>The record read last holds a quote that does not enclose a whole cell.</summary>
    public bool StrayQuote { get; private set; }

    /// <returns>The next record's cells, one empty cell for an empty line; null at the end of the text.</returns>
    public List<string>? Next()
    {
        if (_at >= text.Length)
        {
            return null;
        }

        StrayQuote = false;
        var cells = new List<string>();
        while (true)
        {
            cells.Add(_at < text.Length && text[_at] == '"' ? Quoted() : Bare());
            if (_at >= text.Length)
            {
                return cells;
            }

            char c = text[_at++];
            if (c != delimiter)
            {
                _at += c == '\r' && _at < text.Length && text[_at] == '\n' ? 1 : 0;
                Line++;
                return cells;
            }
        }
    }

    private bool Ends => _at >= text.Length || text[_at] == delimiter || text[_at] is '\r' or '\n';

    private string Bare()
    {
        int start = _at;
        while (!Ends)
        {
            StrayQuote |= text[_at++] == '"';
        }

        return text[start.._at];
    }

    private string Quoted()
    {
        _cell.Clear();
        bool closed = false;
        for (_at++; _at < text.Length && !closed; _at++)
        {
            if (text[_at] != '"')
            {
                Line += text[_at] == '\n' || (text[_at] == '\r' && !(_at + 1 < text.Length && text[_at + 1] == '\n')) ? 1 : 0;
                _cell.Append(text[_at]);
            }
            else if (_at + 1 < text.Length && text[_at + 1] == '"')
            {
                _cell.Append('"');
                _at++;
            }
            else
            {
                closed = true;
            }
        }

        if (!closed || !Ends)
        {
            StrayQuote = true;
            Bare();
        }

        return _cell.ToString();
    }
}
