using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Cornerwright.Garage.Files;
using Json.Schema;

namespace Cornerwright.Garage.Tests.Files;

public sealed class CarSchemaTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(CarSchema.Write());

    [Fact]
    public void The_schema_in_docs_is_the_one_the_code_writes()
    {
        string path = Repository.PathOf("docs/cornerwright-car.schema.json");
        if (Environment.GetEnvironmentVariable("CORNERWRIGHT_WRITE_DOCS") == "1")
        {
            File.WriteAllText(path, CarSchema.Write());
        }

        Assert.True(File.ReadAllText(path) == CarSchema.Write(),
            "Run the tests once with CORNERWRIGHT_WRITE_DOCS=1 and commit the schema.");
    }

    [Fact]
    public void Documents_that_read_are_valid_by_the_schema()
    {
        Assert.True(IsValid(SmallCar.Text));
        foreach (string demo in Directory.EnumerateFiles(Repository.PathOf("."), "*.json", SearchOption.AllDirectories)
            .Where(x => !x.Contains("/bin/", StringComparison.Ordinal) && !x.Contains("/obj/", StringComparison.Ordinal)
                && !x.Contains("node_modules", StringComparison.Ordinal))
            .Where(x => File.ReadAllText(x).Contains($"\"{CarFile.Format}\",\n  \"version\"", StringComparison.Ordinal)))
        {
            Assert.True(IsValid(File.ReadAllText(demo)), demo);
        }

        for (int seed = 1; seed <= 50; seed++)
        {
            Assert.True(IsValid(CarFile.Write(new RandomRecords(seed).Car())), $"seed {seed}");
        }
    }

    [Theory]
    [InlineData("\"id\": \"dune\",", "")]
    [InlineData("\"name\": \"Dune\"", "\"name\": \" \"")]
    [InlineData("\"steered\": true", "\"sterred\": true")]
    [InlineData("\"312 mm\"", "312")]
    [InlineData("\"312 mm\"", "\"mm\"")]
    [InlineData("\"role\": \"main\"", "\"role\": \"big\"")]
    [InlineData("\"bolts\": 5", "\"bolts\": 5.5")]
    [InlineData("\"tolerance\": \"5 mm\", ", "")]
    [InlineData("\"version\": 1", "\"version\": 2")]
    public void What_the_reader_refuses_by_kind_the_schema_refuses_too(string good, string slip)
    {
        string text = SmallCar.Text.Replace(good, slip, StringComparison.Ordinal);
        Assert.False(IsValid(text));
        Assert.False(CarFile.Read(text).Ok);
    }

    [Fact]
    public void The_example_in_the_description_of_the_format_reads_and_stays_as_printed()
    {
        string page = File.ReadAllText(Repository.PathOf("docs/file-format.md"));
        string example = Regex.Match(page, "```json\n(.*?)```", RegexOptions.Singleline).Groups[1].Value;
        var read = CarFile.Read(example);
        Assert.True(read.Ok, string.Join("\n", read.Problems));
        Assert.Equal(example, CarFile.Write(read.Value));
        Assert.True(IsValid(example));
    }

    private static bool IsValid(string text)
    {
        using var document = JsonDocument.Parse(text);
        return Schema.Evaluate(document.RootElement).IsValid;
    }
}
