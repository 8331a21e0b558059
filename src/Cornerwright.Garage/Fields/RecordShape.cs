using System.Collections.Concurrent;
using System.Reflection;
using System.Text.Json;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Fields;

/// <summary>What kind of thing a field holds.</summary>
public enum FieldKind
{
    Text,
    TextList,
    YesNo,
    Whole,
    Number,
    Money,
    Choice,
    Date,
    Reading,
    Record,
    RecordList,
}

/// <summary>One field of a record: its name in files, its words for people, how to get and set it.</summary>
public sealed class FieldShape
{
    private readonly PropertyInfo _property;

    internal FieldShape(PropertyInfo property, FieldAttribute words)
    {
        (_property, Words) = (property, words);
        Name = JsonNamingPolicy.CamelCase.ConvertName(property.Name);
        var type = Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType;
        ElementType = type;
        if (type.IsGenericType && type.GetGenericTypeDefinition() == typeof(IReadOnlyList<>))
        {
            ElementType = type.GetGenericArguments()[0];
            Kind = ElementType == typeof(string) ? FieldKind.TextList : FieldKind.RecordList;
        }
        else
        {
            Kind = type switch
            {
                _ when type == typeof(string) => FieldKind.Text,
                _ when type == typeof(bool) => FieldKind.YesNo,
                _ when type == typeof(int) => FieldKind.Whole,
                _ when type == typeof(double) => FieldKind.Number,
                _ when type == typeof(decimal) => FieldKind.Money,
                _ when type.IsEnum => FieldKind.Choice,
                _ when type == typeof(DateOnly) => FieldKind.Date,
                _ when type == typeof(Reading) => FieldKind.Reading,
                _ => FieldKind.Record,
            };
        }

        if (words.IsQuantity)
        {
            Unit = Units.Find(words.Unit, words.Dimension)
                ?? throw new InvalidOperationException($"{property.Name}: no unit \"{words.Unit}\".");
            MinSi = Unit.ToSi(words.Min);
            MaxSi = Unit.ToSi(words.Max);
        }
    }

    /// <summary>As written in files.</summary>
    public string Name { get; }

    public string PropertyName => _property.Name;

    public FieldAttribute Words { get; }

    public string Label => Words.Label;

    public FieldKind Kind { get; }

    /// <summary>The field's own type, or its elements' type for a list.</summary>
    public Type ElementType { get; }

    /// <summary>The unit in which people read a reading; null for other fields.</summary>
    public Unit? Unit { get; }

    /// <summary>Allowed range of a reading, SI.</summary>
    public double MinSi { get; } = double.NegativeInfinity;

    /// <inheritdoc cref="MinSi"/>
    public double MaxSi { get; } = double.PositiveInfinity;

    /// <summary>The range as people read it.</summary>
    public string Allowed => Words.IsQuantity
        ? FormattableString.Invariant($"{Words.Min:0.######} to {Words.Max:0.######} {Unit!.Symbol}").TrimEnd()
        : Kind == FieldKind.Choice ? string.Join(", ", Enum.GetNames(ElementType).Select(JsonNamingPolicy.CamelCase.ConvertName)) : "";

    /// <summary>A value that may be missing, such as a count nobody has given.</summary>
    public bool IsOptional => Nullable.GetUnderlyingType(_property.PropertyType) is not null;

    /// <summary>What else is said of the property, where it is said.</summary>
    public T? Attribute<T>()
        where T : Attribute => _property.GetCustomAttribute<T>();

    public object? Get(object owner) => _property.GetValue(owner);

    /// <summary>Sets an init-only property: only for an owner that this code has just made.</summary>
    internal void Set(object owner, object? value) => _property.SetValue(owner, value);

    /// <summary>Null if the reading lies in this field's range.</summary>
    public Problem? RangeProblem(string path, Reading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        const double Slack = 1e-9;
        double slack = Slack * Math.Max(Math.Abs(MinSi), Math.Abs(MaxSi));
        return reading.Si >= MinSi - slack && reading.Si <= MaxSi + slack
            ? null
            : new Problem(path, reading.Typed, Allowed, "Check the number and its unit.");
    }

}

/// <summary>The fields of a record type, in the order in which they are declared.</summary>
public sealed class RecordShape
{
    private static readonly ConcurrentDictionary<Type, RecordShape> Known = new();

    private RecordShape(Type type)
    {
        Type = type;
        var chain = new List<Type>();
        for (var t = type; t is not null && t != typeof(object); t = t.BaseType)
        {
            chain.Insert(0, t);
        }

        // Fields of the base record come first, so that every part starts with its id and name.
        Fields = [.. chain.SelectMany(t => t.GetProperties(BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly))
            .Select(p => (Property: p, Words: p.GetCustomAttribute<FieldAttribute>()))
            .Where(p => p.Words is not null)
            .Select(p => new FieldShape(p.Property, p.Words!))];
        ByName = Fields.ToDictionary(f => f.Name, StringComparer.Ordinal);
    }

    public Type Type { get; }
    public IReadOnlyList<FieldShape> Fields { get; }
    public IReadOnlyDictionary<string, FieldShape> ByName { get; }

    public static RecordShape Of(Type type) => Known.GetOrAdd(type, t => new RecordShape(t));

    public static RecordShape Of<T>() => Of(typeof(T));

    internal object New() => Activator.CreateInstance(Type)!;

    /// <summary>A copy of <paramref name="owner"/> with one field changed.</summary>
    public T With<T>(T owner, FieldShape field, object? value)
        where T : class
    {
        ArgumentNullException.ThrowIfNull(owner);
        ArgumentNullException.ThrowIfNull(field);
        var copy = New();
        foreach (var f in Fields)
        {
            f.Set(copy, ReferenceEquals(f, field) ? value : f.Get(owner));
        }

        return (T)copy;
    }
}
