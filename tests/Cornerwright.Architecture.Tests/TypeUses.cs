using System.Reflection.Metadata;

namespace Cornerwright.Architecture.Tests;

/// <summary>One place where a type of a room uses another type of the same room; the file is null for what the compiler wrote.</summary>
internal readonly record struct TypeUse(TypeDefinitionHandle From, TypeDefinitionHandle To, string? File, int Line);

/// <summary>
/// Who uses whom within a room: by bases, interfaces, constraints, attributes, fields, signatures and each instruction of each body.
/// Nested types count as their outermost owner.
/// </summary>
internal sealed class TypeUses(CompiledRoom room)
{
    private readonly TypeNames _names = new(room);
    private readonly List<TypeUse> _uses = [];

    public static IReadOnlyList<TypeUse> Of(CompiledRoom room)
    {
        var uses = new TypeUses(room);
        foreach (var type in room.Tables.TypeDefinitions)
        {
            uses.Type(type);
        }

        return uses._uses;
    }

    private void Type(TypeDefinitionHandle handle)
    {
        var type = room.Tables.GetTypeDefinition(handle);
        Name(type.BaseType);
        Attributes(type.GetCustomAttributes());
        Constraints(type.GetGenericParameters());
        foreach (var contract in type.GetInterfaceImplementations())
        {
            Name(room.Tables.GetInterfaceImplementation(contract).Interface);
        }

        foreach (var field in type.GetFields().Select(room.Tables.GetFieldDefinition))
        {
            field.DecodeSignature(_names, null);
            Attributes(field.GetCustomAttributes());
        }

        foreach (var property in type.GetProperties().Select(room.Tables.GetPropertyDefinition))
        {
            Attributes(property.GetCustomAttributes());
        }

        Note(handle, room.FileOf(handle), 1);
        foreach (var method in type.GetMethods())
        {
            Method(handle, method);
        }
    }

    private void Method(TypeDefinitionHandle owner, MethodDefinitionHandle handle)
    {
        var method = room.Tables.GetMethodDefinition(handle);
        method.DecodeSignature(_names, null);
        Attributes(method.GetCustomAttributes());
        Constraints(method.GetGenericParameters());
        var body = room.Body(handle);
        if (body is { LocalSignature.IsNil: false })
        {
            room.Tables.GetStandaloneSignature(body.LocalSignature).DecodeLocalSignature(_names, null);
        }

        foreach (var region in body?.ExceptionRegions ?? [])
        {
            Name(region.CatchType);
        }

        var start = room.PlaceOf(handle, 0);
        Note(owner, start?.File ?? room.FileOf(owner), start?.Line ?? 1);
        foreach (var instruction in body is null ? [] : Instructions.Of(body))
        {
            if (!instruction.Token.IsNil)
            {
                _names.Meet(instruction.Token);
                var place = _names.Met.Count > 0 ? room.PlaceOf(handle, instruction.Offset) : null;
                Note(owner, place?.File, place?.Line ?? 1);
            }
        }
    }

    private void Name(EntityHandle type)
    {
        if (!type.IsNil)
        {
            _names.Of(type);
        }
    }

    private void Attributes(CustomAttributeHandleCollection attributes)
    {
        foreach (var attribute in attributes)
        {
            _names.Meet(room.Tables.GetCustomAttribute(attribute).Constructor);
        }
    }

    private void Constraints(GenericParameterHandleCollection parameters)
    {
        foreach (var constraint in parameters.SelectMany(p => room.Tables.GetGenericParameter(p).GetConstraints()))
        {
            Name(room.Tables.GetGenericParameterConstraint(constraint).Type);
        }
    }

    /// <summary>What was met since the last note is used by this type, at this place.</summary>
    private void Note(TypeDefinitionHandle user, string? file, int line)
    {
        foreach (var met in _names.Met)
        {
            _uses.Add(new TypeUse(room.Outermost(user), room.Outermost(met), file, line));
        }

        _names.Met.Clear();
    }
}
