using System.Reflection;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;

namespace Cornerwright.Architecture.Tests;

/// <summary>
/// Files, clock, chance and culture enter at the edge. What a compiled room refers to stands in its metadata, so this reads the
/// tables of the assembly rather than its source: an alias or a helper cannot hide it.
/// </summary>
public class PureRoomTests
{
    private static readonly string[] OutsideTypes =
    [
        "System.Console", "System.TimeProvider", "System.Diagnostics.Stopwatch", "System.Diagnostics.Process",
        "System.IO.File", "System.IO.FileInfo", "System.IO.FileStream", "System.IO.Directory", "System.IO.DirectoryInfo", "System.IO.Path",
        "System.Threading.Thread", "System.Threading.Timer", "System.Security.Cryptography.RandomNumberGenerator",
    ];

    private static readonly string[] OutsideMembers =
    [
        "System.DateTime.get_Now", "System.DateTime.get_UtcNow", "System.DateTime.get_Today", "System.DateTimeOffset.get_Now",
        "System.DateTimeOffset.get_UtcNow", "System.Random.get_Shared", "System.Guid.NewGuid",
        "System.Globalization.CultureInfo.get_CurrentCulture", "System.Globalization.CultureInfo.get_CurrentUICulture",
    ];

    [Theory]
    [InlineData("Cornerwright.Mechanics")]
    [InlineData("Cornerwright.Garage")]
    [InlineData("Cornerwright.Workshop")]
    public void No_file_no_clock_no_chance_no_culture(string room)
    {
        var (types, members) = Used(Assembly.Load(room).Location);
        Assert.Empty(types.Intersect(OutsideTypes, StringComparer.Ordinal));
        Assert.Empty(members.Where(m => IsOutside(m.Name)).Select(m => m.Name));
        Assert.Empty(members.Where(m => m is { Name: "System.Random..ctor", Parameters: 0 }).Select(_ => "Random without a seed"));
    }

    [Fact]
    public void Mechanics_touches_no_input_or_output_at_all()
    {
        string[] rooms = ["System.IO", "System.Net", "System.Diagnostics.Process", "System.Threading", "Microsoft.Win32"];
        var (types, _) = Used(Assembly.Load("Cornerwright.Mechanics").Location);
        Assert.DoesNotContain(types, t => rooms.Any(r => t.StartsWith(r + ".", StringComparison.Ordinal)));
    }

    [Fact]
    public void The_reader_of_these_tables_sees_a_clock_where_there_is_one()
    {
        // This assembly reads a clock below, so the rule would catch it here.
        _ = DateTime.UtcNow;
        var (types, members) = Used(typeof(PureRoomTests).Assembly.Location);
        Assert.Contains("System.IO.Path", types);
        Assert.Contains("System.DateTime.get_UtcNow", members.Select(m => m.Name));
    }

    /// <summary>The compiler's own iterators ask for the thread they were made on: of Environment, that alone is no way out.</summary>
    private static bool IsOutside(string member) =>
        OutsideMembers.Contains(member, StringComparer.Ordinal)
        || (member.StartsWith("System.Environment.", StringComparison.Ordinal)
            && member != "System.Environment.get_CurrentManagedThreadId");

    private static (IReadOnlySet<string> Types, IReadOnlyList<(string Name, int Parameters)> Members) Used(string assembly)
    {
        using var file = new PEReader(File.OpenRead(assembly));
        var tables = file.GetMetadataReader();
        var types = new HashSet<string>(StringComparer.Ordinal);
        foreach (var handle in tables.TypeReferences)
        {
            types.Add(NameOf(tables, handle));
        }

        var members = new List<(string, int)>();
        foreach (var handle in tables.MemberReferences)
        {
            var member = tables.GetMemberReference(handle);
            if (member.Parent.Kind != HandleKind.TypeReference || member.GetKind() != MemberReferenceKind.Method)
            {
                continue;
            }

            var signature = tables.GetBlobReader(member.Signature);
            var header = signature.ReadSignatureHeader();
            if (header.IsGeneric)
            {
                signature.ReadCompressedInteger();
            }

            members.Add(($"{NameOf(tables, (TypeReferenceHandle)member.Parent)}.{tables.GetString(member.Name)}",
                signature.ReadCompressedInteger()));
        }

        return (types, members);
    }

    private static string NameOf(MetadataReader tables, TypeReferenceHandle handle)
    {
        var type = tables.GetTypeReference(handle);
        string space = tables.GetString(type.Namespace), name = tables.GetString(type.Name);
        return space.Length > 0 ? space + "." + name : name;
    }
}
