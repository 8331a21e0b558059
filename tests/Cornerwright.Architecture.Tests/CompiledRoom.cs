using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;
using System.Reflection.PortableExecutable;

namespace Cornerwright.Architecture.Tests;

/// <summary>
/// An assembly of ours as it was compiled: its types, the instructions of its methods and, from the symbols beside it, the source
/// file of each. What an alias or an inferred type hides in the source stands here by name.
/// </summary>
internal sealed class CompiledRoom : IDisposable
{
    // Portable symbols name the file of a type that has no line of code of its own under this kind.
    private static readonly Guid FileOfType = new("932E74BC-DBA9-4478-8D46-0F32A7BAB3D3");

    private readonly PEReader _file;
    private readonly MetadataReaderProvider _symbols;

    public CompiledRoom(string assembly)
    {
        _file = new PEReader(File.OpenRead(assembly));
        Tables = _file.GetMetadataReader();
        _symbols = MetadataReaderProvider.FromPortablePdbStream(File.OpenRead(Path.ChangeExtension(assembly, ".pdb")));
    }

    public MetadataReader Tables { get; }

    /// <summary>The outermost type around this one: a nested type lives where its owner lives.</summary>
    public TypeDefinitionHandle Outermost(TypeDefinitionHandle type)
    {
        for (var owner = Tables.GetTypeDefinition(type).GetDeclaringType(); !owner.IsNil; owner = Tables.GetTypeDefinition(type)
            .GetDeclaringType())
        {
            type = owner;
        }

        return type;
    }

    public string FullName(TypeDefinitionHandle handle)
    {
        var type = Tables.GetTypeDefinition(handle);
        var owner = type.GetDeclaringType();
        string name = Tables.GetString(type.Name), space = Tables.GetString(type.Namespace);
        return owner.IsNil ? (space.Length > 0 ? space + "." + name : name) : FullName(owner) + "." + name;
    }

    /// <summary>Null for abstract and external methods.</summary>
    public MethodBodyBlock? Body(MethodDefinitionHandle method)
    {
        int address = Tables.GetMethodDefinition(method).RelativeVirtualAddress;
        return address == 0 ? null : _file.GetMethodBody(address);
    }

    /// <summary>The file that most likely declares the type, relative to the repository; null for what the compiler wrote.</summary>
    public string? FileOf(TypeDefinitionHandle handle)
    {
        var symbols = _symbols.GetMetadataReader();
        foreach (var note in symbols.GetCustomDebugInformation(handle).Select(symbols.GetCustomDebugInformation))
        {
            if (symbols.GetGuid(note.Kind) == FileOfType)
            {
                return NameOf(MetadataTokens.DocumentHandle(symbols.GetBlobReader(note.Value).ReadCompressedInteger()));
            }
        }

        var type = Tables.GetTypeDefinition(handle);
        return type.GetMethods().Select(FileOf).FirstOrDefault(f => f is not null)
            ?? type.GetNestedTypes().Select(FileOf).FirstOrDefault(f => f is not null)
            ?? PageOf(FullName(handle));
    }

    /// <summary>The file that holds the method's first line, relative to the repository; null for what the compiler wrote.</summary>
    public string? FileOf(MethodDefinitionHandle method) => PlaceOf(method, int.MaxValue)?.File;

    /// <summary>File and line of the instruction at this offset; null for what the compiler wrote.</summary>
    public (string File, int Line)? PlaceOf(MethodDefinitionHandle method, int offset)
    {
        var symbols = _symbols.GetMetadataReader();
        (string File, int Line)? place = null;
        foreach (var point in symbols.GetMethodDebugInformation(method.ToDebugInformationHandle()).GetSequencePoints())
        {
            if (!point.IsHidden && (place is null || point.Offset <= offset) && NameOf(point.Document) is { } file)
            {
                place = (file, point.StartLine);
            }
        }

        return place;
    }

    public void Dispose()
    {
        _symbols.Dispose();
        _file.Dispose();
    }

    /// <summary>A page of plain elements has no line of code: its file is found by its name.</summary>
    private static string? PageOf(string fullName)
    {
        int project = fullName.IndexOf('.', fullName.IndexOf('.', StringComparison.Ordinal) + 1);
        string file = project < 0 ? "" : $"src/{fullName[..project]}/{fullName[(project + 1)..].Replace('.', '/')}.razor";
        return project >= 0 && File.Exists(Path.Combine(Repository.Root, file)) ? file : null;
    }

    private string? NameOf(DocumentHandle document)
    {
        if (document.IsNil)
        {
            return null;
        }

        var symbols = _symbols.GetMetadataReader();
        string path = symbols.GetString(symbols.GetDocument(document).Name).Replace('\\', '/');
        string root = Repository.Root.Replace('\\', '/') + "/";
        string relative = path.StartsWith(root, StringComparison.Ordinal) ? path[root.Length..] : path;
        return relative.Contains("/obj/", StringComparison.Ordinal) || Path.IsPathRooted(relative) ? null : relative;
    }
}
