using System.Text;
using Cornerwright.Garage.Files;

namespace Cornerwright.Garage.Tests.Files;

public sealed class CarFileProblemTests
{
    [Fact]
    public void All_problems_of_a_file_are_told_at_once_each_with_field_value_allowed_and_mend()
    {
        string text = SmallCar.Text
            .Replace("\"2480 mm\"", "\"2480 kg\"", StringComparison.Ordinal)
            .Replace("\"395 kg\"", "\"3950 kg\"", StringComparison.Ordinal)
            .Replace("\"bolts\": 5", "\"bolts\": 5.5", StringComparison.Ordinal)
            .Replace("\"role\": \"main\"", "\"role\": \"big\"", StringComparison.Ordinal)
            .Replace("\"name\": \"Sixty\"", "\"nmae\": \"Sixty\"", StringComparison.Ordinal);
        var problems = CarFile.Read(text).Problems.Select(x => x.ToString()).ToList();
        Assert.Equal(6, problems.Count);
        Assert.StartsWith("Wheelbase: \"2480 kg\" is not accepted. Allowed: a length", problems[0], StringComparison.Ordinal);
        Assert.EndsWith("\"kg\" measures something else: use one of the units listed.", problems[0], StringComparison.Ordinal);
        Assert.Equal("Load cases 1 / Front left: \"3950 kg\" is not accepted. Allowed: 20 to 3000 kg. Check the number and its unit.",
            problems[1]);
        Assert.Equal("Front axle / Hub / Bolt count: \"5.5\" is not accepted. Allowed: 0 to 1000. Write a whole number without quotes.",
            problems[2]);
        Assert.Contains("Parts / Springs 1 / nmae: \"\"Sixty\"\" is not accepted. Allowed: id, name, price", problems[3],
            StringComparison.Ordinal);
        Assert.Equal("Parts / Springs 1 / Role: \"\"big\"\" is not accepted. Allowed: main, helper, tender. Choose one of these.",
            problems[4]);
        Assert.Equal("Parts / Springs 1 / Name: \"\" is not accepted. Allowed: some text. Fill it in.", problems[5]);
    }

    [Fact]
    public void What_does_not_hang_together_is_told_at_once_too()
    {
        string text = SmallCar.Text
            .Replace("\"measuredBuild\": \"street\"", "\"measuredBuild\": \"track\"", StringComparison.Ordinal)
            .Replace("\"wheel\": \"w18\"", "\"wheel\": \"w19\"", StringComparison.Ordinal)
            .Replace("[\"s60\"]", "[\"s60\", \"s70\"]", StringComparison.Ordinal);
        Assert.Equal(
            [
                "measured on build: \"track\" is not accepted. Allowed: street. Choose one that is on the shelf, or put this one there.",
                "build street / front left / wheel: \"w19\" is not accepted. "
                    + "Allowed: w18. Choose one that is on the shelf, or put this one there.",
                "build street / front left / stack: \"s70\" is not accepted. "
                    + "Allowed: s60. Choose one that is on the shelf, or put this one there.",
            ],
            CarFile.Read(text).Problems.Select(x => x.ToString()));
    }

    [Theory]
    [InlineData("\"id\": \"dune\"", "\"id\": \"dune\", \"id\": \"other\"",
        "Id: \"\"other\"\" is not accepted. Allowed: once. The field stands here twice: keep one.")]
    [InlineData("\"version\": 1", "\"version\": 1, \"version\": 1",
        "version: \"1\" is not accepted. Allowed: once. The field stands here twice: keep one.")]
    [InlineData("\"version\": 1", "\"version\": 2",
        "version: \"2\" is not accepted. Allowed: 1. Open it with the program version that wrote it, or update this one.")]
    [InlineData("\"cornerwright-car\"", "\"car\"",
        "format: \"\"car\"\" is not accepted. Allowed: cornerwright-car. This is not a car file, or its first lines were lost.")]
    [InlineData("\"name\": \"Dune\"", "\"name\": \"Dune\\uD800\"",
        "Name: \"\"Dune\\uD800\"\" is not accepted. Allowed: whole characters. A \\uD800 to \\uDFFF stands alone: type the text anew.")]
    [InlineData("\"name\": \"Dune\"", "\"name\": \"Du\\u0000ne\"",
        "Name: \"\"Du\\u0000ne\"\" is not accepted. Allowed: text without control characters. Type it anew.")]
    [InlineData("\"name\": \"Dune\"", "\"name\": \"  \"", "Name: \"\"  \"\" is not accepted. Allowed: some text. Fill it in.")]
    [InlineData("\"id\": \"dune\"", "\"id\": \" dune\"",
        "Id: \"\" dune\"\" is not accepted. Allowed: no blanks before and behind it. Take the blanks out.")]
    [InlineData("\"tolerance\": \"5 mm\", ", "", "Wheelbase / tolerance: \"\" is not accepted. Allowed: an amount "
        + "beside every spread, e.g. 0.5 mm. Add the tolerance, or take the spread out.")]
    [InlineData("\"2026-05-01\"", "\"2026-13-01\"", "Wheelbase / date: \"\"2026-13-01\"\" is not accepted. Allowed: value, tolerance and "
        + "date as text (date as 2026-05-31), spread, source. Correct the name or the kind of the value.")]
    [InlineData("\"price\": 240.50", "\"price\": 1e30",
        "Parts / Wheels 1 / Price each: \"1e30\" is not accepted. Allowed: 0 to 1000000000. Write the price as a number without quotes.")]
    [InlineData("\"price\": 240.50", "\"price\": -1",
        "Parts / Wheels 1 / Price each: \"-1\" is not accepted. Allowed: 0 to 1000000000. Write the price as a number without quotes.")]
    [InlineData("\"steered\": true", "\"steered\": null",
        "Front axle / Steered: \"null\" is not accepted. Allowed: true or false. Write true or false without quotes.")]
    public void One_slip_gives_one_clear_message(string good, string slip, string message) =>
        Assert.Equal(message, Assert.Single(CarFile.Read(SmallCar.Text.Replace(good, slip, StringComparison.Ordinal)).Problems).ToString());

    // Seen by fuzzing: a field with an empty name gave a problem without a place.
    [Fact]
    public void A_field_without_a_name_still_has_a_place()
    {
        string text = SmallCar.Text.Replace("\"version\": 1,", "\"version\": 1, \"\": 7,", StringComparison.Ordinal);
        Assert.Equal("\"\"", Assert.Single(CarFile.Read(text).Problems).Field);
    }

    [Theory]
    [InlineData("", "line 1, byte 0")]
    [InlineData("{", "line 1, byte 1")]
    [InlineData("{\n\"a\": 1e}", "line 2, byte 7")]
    public void Broken_text_says_where(string text, string where)
    {
        var problem = Assert.Single(CarFile.Read(text).Problems);
        Assert.Equal(where, problem.Given);
        Assert.StartsWith("Mend the text there: ", problem.Cure, StringComparison.Ordinal);
        Assert.DoesNotContain("LineNumber", problem.Cure, StringComparison.Ordinal);
    }

    [Fact]
    public void Bytes_that_are_no_text_are_refused()
    {
        byte[] latin = Encoding.Latin1.GetBytes(SmallCar.Text.Replace("Dune", "D\u00fcne", StringComparison.Ordinal));
        Assert.Equal("Save it as UTF-8 in the editor, or take the file before it was changed.",
            Assert.Single(CarFile.Read(latin).Problems).Cure);
        Assert.Equal("Half of a character pair stands alone there: type that text anew.",
            Assert.Single(CarFile.Read(SmallCar.Text + "\uD800").Problems).Cure);
    }

    [Fact]
    public void Deep_nesting_and_long_lists_end_early()
    {
        string deep = string.Concat(Enumerable.Repeat("[", 100_000));
        Assert.Single(CarFile.Read(deep).Problems);
        string many =
            SmallCar.Text.Replace("[\"s60\"]", "[" + string.Join(",", Enumerable.Repeat("\"s60\"", 2001)) + "]", StringComparison.Ordinal);
        Assert.Equal("2001 entries", Assert.Single(CarFile.Read(many).Problems).Given);
        string wrong =
            SmallCar.Text.Replace("[\"s60\"]", "[" + string.Join(",", Enumerable.Repeat("7", 1999)) + "]", StringComparison.Ordinal);
        var problems = CarFile.Read(wrong).Problems;
        Assert.Equal(200, problems.Count);
    }
}
