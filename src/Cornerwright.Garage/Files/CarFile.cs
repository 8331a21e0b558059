using System.Text;
using System.Text.Json;
using System.Text.Unicode;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Problems;

namespace Cornerwright.Garage.Files;

/// <summary>The open file format: one JSON document a car. docs/file-format.md describes it; the schema is generated.</summary>
public static class CarFile
{
    /// <summary>Stands in the field "format" of every document.</summary>
    public const string Format = "cornerwright-car";

    /// <summary>Raised when a reader of the old version could misread a new document.</summary>
    public const int Version = 1;

    /// <summary>A document of a car with hundreds of parts has about 1 MB; more than this is not ours.</summary>
    public const int GreatestBytes = 64 * 1024 * 1024;

    /// <summary>Deeper nesting than any of our records, so that a hostile file cannot exhaust the stack.</summary>
    private const int GreatestDepth = 32;

    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    private static ReadOnlySpan<byte> ByteOrderMark => [0xEF, 0xBB, 0xBF];

    /// <summary>A car from text; every problem of the document at once.</summary>
    public static Checked<Car> Read(string json) => Read(json, Consistency.Check);

    /// <summary>
    /// A car from a document that was whole when it was kept. A rule about what stands near the wheel that came since does not close it:
    /// it opens, and the rule is told when the car is saved again.
    /// </summary>
    public static Checked<Car> ReadKept(string json) => Read(json, Consistency.CheckKept);

    private static Checked<Car> Read(string json, Func<Car, IReadOnlyList<Problem>> hangsTogether)
    {
        ArgumentNullException.ThrowIfNull(json);
        try
        {
            return Read(Strict.GetBytes(json), hangsTogether);
        }
        catch (EncoderFallbackException error)
        {
            return Checked<Car>.Wrong(new Problem("file", $"character {error.Index + 1}", "whole characters",
                "Half of a character pair stands alone there: type that text anew."));
        }
    }

    /// <inheritdoc cref="Read(string)"/>
    public static Checked<Car> Read(ReadOnlyMemory<byte> utf8) => Read(utf8, Consistency.Check);

    private static Checked<Car> Read(ReadOnlyMemory<byte> utf8, Func<Car, IReadOnlyList<Problem>> hangsTogether)
    {
        if (utf8.Length > GreatestBytes)
        {
            return Checked<Car>.Wrong(
                new Problem("file", $"{utf8.Length} bytes", $"at most {GreatestBytes} bytes", "This is not a car file."));
        }

        if (!Utf8.IsValid(utf8.Span))
        {
            return Checked<Car>.Wrong(new Problem("file", "bytes that are no text", "UTF-8 text",
                "Save it as UTF-8 in the editor, or take the file before it was changed."));
        }

        if (utf8.Span.StartsWith(ByteOrderMark))
        {
            utf8 = utf8[ByteOrderMark.Length..];
        }

        JsonDocument document;
        try
        {
            document = JsonDocument.Parse(utf8, new JsonDocumentOptions { MaxDepth = GreatestDepth });
        }
        catch (JsonException error)
        {
            string where = $"line {(error.LineNumber ?? 0) + 1}, byte {error.BytePositionInLine ?? 0}";
            return Checked<Car>.Wrong(
                new Problem("file", where, "JSON as in docs/file-format.md", "Mend the text there: " + WithoutPlace(error.Message)));
        }

        using (document)
        {
            var reader = new DocumentReader();
            var car = reader.ReadCar(document.RootElement);
            if (reader.Problems.Count == 0 && car is not null)
            {
                reader.Problems.AddRange(hangsTogether(car));
            }

            return reader.Problems.Count == 0 && car is not null ? Checked<Car>.From(car) : Checked<Car>.Wrong(First(reader.Problems));
        }
    }

    /// <summary>The document: fields in declared order, one reading a line, so that two versions compare line by line.</summary>
    public static string Write(Car car) => DocumentWriter.Write(car);

    private static IReadOnlyList<Problem> First(List<Problem> problems) => problems.Count <= DocumentReader.MostProblems
        ? problems
        : [.. problems.Take(DocumentReader.MostProblems),
            new Problem("file", "more problems", $"{DocumentReader.MostProblems} are shown", "Mend these first, then read it again.")];

    /// <summary>The framework ends its messages with line and byte, which stand in the problem already.</summary>
    private static string WithoutPlace(string message)
    {
        int at = message.IndexOf(" LineNumber:", StringComparison.Ordinal);
        return at < 0 ? message : message[..at];
    }
}
