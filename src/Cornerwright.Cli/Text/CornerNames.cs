using Cornerwright.Garage.Chassis;

namespace Cornerwright.Cli.Text;

/// <summary>Corners as they are typed and as scripts read them.</summary>
internal static class CornerNames
{
    /// <summary>"front-left".</summary>
    public static string Name(this CornerPlace corner) => corner.Words().Replace(' ', '-');
}
