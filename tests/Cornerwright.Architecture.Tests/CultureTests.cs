using System.Reflection;
using System.Reflection.Metadata;

namespace Cornerwright.Architecture.Tests;

/// <summary>
/// No number that Mechanics, Garage or Workshop write or read depends on the culture of whoever calls them: each call that formats,
/// reads or orders says invariant. Read from the compiled methods, since an interpolated string hides the call from the source.
/// </summary>
/// <remarks>Exempt: what the compiler writes for records (nobody prints a whole record).</remarks>
public sealed class CultureTests
{
    [Theory]
    [InlineData("Cornerwright.Mechanics")]
    [InlineData("Cornerwright.Garage")]
    [InlineData("Cornerwright.Workshop")]
    public void No_number_is_written_or_read_in_the_callers_culture(string room)
    {
        var offenders = Offenders(Assembly.Load(room).Location);
        Assert.True(offenders.Count == 0, $"In the caller's culture, {offenders.Count} times:\n{string.Join('\n', offenders)}");
    }

    // The rule bites: each line of the sample below is named once, and no line that says invariant.
    [Fact]
    public void The_rule_sees_what_takes_the_culture_in_silence()
    {
        const string Sample = "tests/Cornerwright.Architecture.Tests/CultureSample.cs:";
        var seen = Offenders(typeof(CultureTests).Assembly.Location).Where(o => o.StartsWith(Sample, StringComparison.Ordinal));
        Assert.Equal(CultureSample.Offending.Select(line => Sample + line), seen);
    }

    private static List<string> Offenders(string assembly)
    {
        using var room = new CompiledRoom(assembly);
        var names = new TypeNames(room);
        var offenders = new List<string>();
        foreach (var method in room.Tables.MethodDefinitions)
        {
            if (room.Body(method) is not { } body || IsWrittenByCompiler(room, names, method))
            {
                continue;
            }

            foreach (var (offset, offence) in CultureOfCalls.Offences(Instructions.Of(body), names))
            {
                var place = room.PlaceOf(method, offset);
                offenders.Add(
                    $"{place?.File ?? room.FullName(room.Tables.GetMethodDefinition(method).GetDeclaringType())}:{place?.Line}: {offence}");
            }
        }

        return offenders;
    }

    private static bool IsWrittenByCompiler(CompiledRoom room, TypeNames names, MethodDefinitionHandle method) =>
        room.Tables.GetMethodDefinition(method).GetCustomAttributes()
            .Any(a => names.CallOf(room.Tables.GetCustomAttribute(a).Constructor)?.Owner.EndsWith("CompilerGeneratedAttribute",
                StringComparison.Ordinal) == true);
}
