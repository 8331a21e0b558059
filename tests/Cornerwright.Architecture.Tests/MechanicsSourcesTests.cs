using System.Reflection;
using System.Runtime.CompilerServices;
using System.Xml.Linq;
using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Architecture.Tests;

/// <summary>
/// Whoever computes in Mechanics says where the formula comes from: the XML documentation of every public method holds
/// "Source:".
/// </summary>
/// <remarks>
/// Exempt, and why: operators, properties and constructors (they name no method of their own); what the compiler writes for
/// records; methods that override or implement one of Mechanics, which is asked instead; delegates; enums; and the algebra
/// of value types in Geometry whose own documentation holds a source for all of it.
/// </remarks>
public sealed class MechanicsSourcesTests
{
    private const BindingFlags Declared =
        BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    private static readonly Assembly Mechanics = typeof(Vec3).Assembly;

    [Fact]
    public void Every_public_method_of_Mechanics_names_its_source()
    {
        var offenders = Offenders(Documentation());
        Assert.True(offenders.Count == 0, "Without \"Source:\" in their documentation:\n" + string.Join('\n', offenders));
    }

    // The rule bites: with no documentation at all, it names every method it looks at.
    [Fact]
    public void Without_documentation_the_rule_finds_every_method()
    {
        var offenders = Offenders([]);
        Assert.Contains("Cornerwright.Mechanics.Springs.SpringStack.ForceAt", offenders);
        Assert.Contains("Cornerwright.Mechanics.Geometry.Vec3.Unit", offenders);
        Assert.DoesNotContain(offenders, name =>
            name.Contains("op_", StringComparison.Ordinal) || name.EndsWith(".Equals", StringComparison.Ordinal));
    }

    private static Dictionary<string, string> Documentation()
    {
        string path = Path.ChangeExtension(Mechanics.Location, ".xml");
        Assert.True(File.Exists(path), $"{path} is missing: Mechanics no longer writes its documentation.");
        return XDocument.Load(path).Descendants("member").ToDictionary(member => member.Attribute("name")!.Value, member => member.Value);
    }

    private static List<string> Offenders(Dictionary<string, string> documentation)
    {
        var offenders = new List<string>();
        foreach (var type in Mechanics.GetExportedTypes().Where(type => !type.IsEnum && !typeof(Delegate).IsAssignableFrom(type)))
        {
            string typeName = type.FullName!.Replace('+', '.');
            if (IsAlgebra(type) && HasSource(documentation, "T:" + typeName))
            {
                continue;
            }

            // Overloads are counted together: as many documented sources as methods of that name.
            foreach (var overloads in type.GetMethods(Declared).Where(method => IsOurs(type, method)).GroupBy(method => method.Name))
            {
                string name = $"{typeName}.{overloads.Key}";
                int sources = documentation.Keys.Count(key => IsMethod(key, name) && HasSource(documentation, key));
                if (sources < overloads.Count())
                {
                    offenders.Add(name);
                }
            }
        }

        return offenders;
    }

    private static bool IsAlgebra(Type type) => type.IsValueType && type.Namespace == typeof(Vec3).Namespace;

    private static bool IsOurs(Type type, MethodInfo method) =>
        !method.IsSpecialName
        && method.GetCustomAttribute<CompilerGeneratedAttribute>() is null
        && method.GetBaseDefinition().DeclaringType == type
        && !ImplementsOneOfMechanics(type, method);

    private static bool ImplementsOneOfMechanics(Type type, MethodInfo method) =>
        !type.IsInterface
        && type.GetInterfaces().Where(contract => contract.Assembly == Mechanics)
            .Any(contract => type.GetInterfaceMap(contract).TargetMethods.Contains(method));

    // "M:Type.Method", "M:Type.Method(arguments)" or "M:Type.Method``1(arguments)".
    private static bool IsMethod(string key, string name) =>
        key.StartsWith("M:" + name, StringComparison.Ordinal) && (key.Length == name.Length + 2 || key[name.Length + 2] is '(' or '`');

    private static bool HasSource(Dictionary<string, string> documentation, string key) =>
        documentation.TryGetValue(key, out string? text) && text.Contains("Source:", StringComparison.Ordinal);
}
