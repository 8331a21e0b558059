using System.Collections.Immutable;
using System.Reflection.Metadata;

namespace Cornerwright.Architecture.Tests;

/// <summary>Writes the types of a signature by name, and keeps those of the same assembly that it met.</summary>
internal sealed class TypeNames(CompiledRoom room) : ISignatureTypeProvider<string, object?>
{
    public HashSet<TypeDefinitionHandle> Met { get; } = [];

    public string GetTypeFromDefinition(MetadataReader reader, TypeDefinitionHandle handle, byte rawTypeKind)
    {
        Met.Add(handle);
        return room.FullName(handle);
    }

    public string GetTypeFromReference(MetadataReader reader, TypeReferenceHandle handle, byte rawTypeKind)
    {
        var type = reader.GetTypeReference(handle);
        string name = reader.GetString(type.Name), space = reader.GetString(type.Namespace);
        return type.ResolutionScope.Kind == HandleKind.TypeReference
            ? GetTypeFromReference(reader, (TypeReferenceHandle)type.ResolutionScope, rawTypeKind) + "." + name
            : space.Length > 0 ? space + "." + name : name;
    }

    public string GetTypeFromSpecification(MetadataReader reader, object? genericContext, TypeSpecificationHandle handle,
        byte rawTypeKind) =>
        reader.GetTypeSpecification(handle).DecodeSignature(this, genericContext);

    public string GetPrimitiveType(PrimitiveTypeCode typeCode) => "System." + typeCode;

    public string GetGenericInstantiation(string genericType, ImmutableArray<string> typeArguments) =>
        $"{genericType}<{string.Join(',', typeArguments)}>";

    public string GetArrayType(string elementType, ArrayShape shape) => elementType + "[,]";

    public string GetSZArrayType(string elementType) => elementType + "[]";

    public string GetByReferenceType(string elementType) => elementType + "&";

    public string GetPointerType(string elementType) => elementType + "*";

    public string GetPinnedType(string elementType) => elementType;

    public string GetModifiedType(string modifier, string unmodifiedType, bool isRequired) => unmodifiedType;

    public string GetFunctionPointerType(MethodSignature<string> signature) => "function";

    public string GetGenericMethodParameter(object? genericContext, int index) => "!!" + index;

    public string GetGenericTypeParameter(object? genericContext, int index) => "!" + index;

    /// <summary>Name of the type behind a token that names one.</summary>
    public string Of(EntityHandle type) => type.Kind switch
    {
        HandleKind.TypeDefinition => GetTypeFromDefinition(room.Tables, (TypeDefinitionHandle)type, 0),
        HandleKind.TypeReference => GetTypeFromReference(room.Tables, (TypeReferenceHandle)type, 0),
        HandleKind.TypeSpecification => GetTypeFromSpecification(room.Tables, null, (TypeSpecificationHandle)type, 0),
        _ => "",
    };

    /// <summary>
    /// Meets every type that an instruction names through this token: of a call its owner and type arguments, not its signature.
    /// </summary>
    public void Meet(EntityHandle token)
    {
        switch (token.Kind)
        {
            case HandleKind.MethodSpecification:
                var generic = room.Tables.GetMethodSpecification((MethodSpecificationHandle)token);
                generic.DecodeSignature(this, null);
                Meet(generic.Method);
                break;
            case HandleKind.MethodDefinition:
                Of(room.Tables.GetMethodDefinition((MethodDefinitionHandle)token).GetDeclaringType());
                break;
            case HandleKind.FieldDefinition:
                Of(room.Tables.GetFieldDefinition((FieldDefinitionHandle)token).GetDeclaringType());
                break;
            case HandleKind.MemberReference:
                Meet(room.Tables.GetMemberReference((MemberReferenceHandle)token).Parent);
                break;
            default:
                Of(token);
                break;
        }
    }

    /// <summary>
    /// Owner, name, generic arguments and parameters of the method that a call names; null where the token names no method.
    /// </summary>
    public Call? CallOf(EntityHandle token)
    {
        switch (token.Kind)
        {
            case HandleKind.MethodSpecification:
                var generic = room.Tables.GetMethodSpecification((MethodSpecificationHandle)token);
                var arguments = generic.DecodeSignature(this, null);
                return CallOf(generic.Method) is { } bare ? bare with { Arguments = arguments } : null;
            case HandleKind.MethodDefinition:
                var ours = room.Tables.GetMethodDefinition((MethodDefinitionHandle)token);
                return new Call(Of(ours.GetDeclaringType()), room.Tables.GetString(ours.Name), [],
                    ours.DecodeSignature(this, null).ParameterTypes);
            case HandleKind.MemberReference:
                var member = room.Tables.GetMemberReference((MemberReferenceHandle)token);
                string name = room.Tables.GetString(member.Name), owner = Of(member.Parent);
                if (member.GetKind() == MemberReferenceKind.Field)
                {
                    member.DecodeFieldSignature(this, null);
                    return null;
                }

                return new Call(owner, name, [], member.DecodeMethodSignature(this, null).ParameterTypes);
            default:
                return null;
        }
    }
}

/// <summary>A method as a call names it.</summary>
internal sealed record Call(string Owner, string Name, ImmutableArray<string> Arguments, ImmutableArray<string> Parameters);
