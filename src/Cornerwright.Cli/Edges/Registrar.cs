using Spectre.Console.Cli;

namespace Cornerwright.Cli.Edges;

/// <summary>Hands the surroundings to every verb that the command tree makes.</summary>
internal sealed class Registrar(Surroundings around) : ITypeRegistrar, ITypeResolver
{
    private readonly Dictionary<Type, List<Func<object?>>> _known = new() { [typeof(Surroundings)] = [() => around] };

    public void Register(Type service, Type implementation) => Add(service, () => Make(implementation));

    public void RegisterInstance(Type service, object implementation) => Add(service, () => implementation);

    public void RegisterLazy(Type service, Func<object> factory) => Add(service, factory);

    public ITypeResolver Build() => this;

    /// <summary>The last of a type that was registered; of IEnumerable, all of them.</summary>
    public object? Resolve(Type? type)
    {
        if (type is null)
        {
            return null;
        }

        if (type.IsGenericType && type.GetGenericTypeDefinition() == typeof(IEnumerable<>))
        {
            var element = type.GetGenericArguments()[0];
            var all = _known.TryGetValue(element, out var several) ? several : [];
            var array = Array.CreateInstance(element, all.Count);
            for (int i = 0; i < all.Count; i++)
            {
                array.SetValue(all[i](), i);
            }

            return array;
        }

        return _known.TryGetValue(type, out var makers) ? makers[^1]()
            : type.IsAbstract || type.IsInterface ? null
            : Make(type);
    }

    private void Add(Type service, Func<object?> make)
    {
        if (!_known.TryGetValue(service, out var makers))
        {
            _known[service] = makers = [];
        }

        makers.Add(make);
    }

    private object? Make(Type type)
    {
        var maker = type.GetConstructors().OrderByDescending(c => c.GetParameters().Length).FirstOrDefault();
        return maker is null ? Activator.CreateInstance(type)
            : maker.Invoke([.. maker.GetParameters().Select(p => Resolve(p.ParameterType))]);
    }
}
