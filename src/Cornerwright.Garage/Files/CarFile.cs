using System.Text;
using System.Text.Json;
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

    /// <summary>A car from text; every problem of the document at once.</summary>
    public static Checked<Car> Read(string json)
    {
        ArgumentNullException.ThrowIfNull(json);
        return Read(Encoding.UTF8.GetBytes(json));
    }

    /// <inheritdoc cref="Read(string)"/>
    public static Checked<Car> Read(ReadOnlyMemory<byte> utf8)
    {
        if (utf8.Length > GreatestBytes)
        {
            return Checked<Car>.Wrong(new Problem("file", $"{utf8.Length} bytes", $"at most {GreatestBytes} bytes", "This is not a car file."));
        }

        JsonDocument document;
        try
        {
            document = JsonDocument.Parse(utf8, new JsonDocumentOptions { MaxDepth = GreatestDepth });
        }
        catch (JsonException error)
        {
            string where = $"line {(error.LineNumber ?? 0) + 1}, byte {error.BytePositionInLine ?? 0}";
            return Checked<Car>.Wrong(new Problem("file", where, "JSON as in docs/file-format.md", "Mend the text there: " + error.Message));
        }

        using (document)
        {
            var reader = new DocumentReader();
            var car = reader.ReadCar(document.RootElement);
            if (reader.Problems.Count == 0 && car is not null)
            {
                reader.Problems.AddRange(Consistency.Check(car));
            }

            return reader.Problems.Count == 0 && car is not null ? Checked<Car>.From(car) : Checked<Car>.Wrong(reader.Problems);
        }
    }

    /// <summary>The document: fields in declared order, one reading a line, so that two versions compare line by line.</summary>
    public static string Write(Car car) => DocumentWriter.Write(car);
}
