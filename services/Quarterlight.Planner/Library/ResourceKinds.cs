using Quarterlight.V1;

namespace Quarterlight.Planner.Library;

/// <summary>The kinds of resource a team keeps.</summary>
internal static class ResourceKinds
{
    public static ResourceKind<V1.Cabin> Cabins { get; } = new("cabins", "cabin", V1.Cabin.Parser, (c, name, revision, time) =>
    {
        c.Name = name;
        c.Revision = revision;
        c.UpdateTime = time;
    });

    public static ResourceKind<Kit> Kits { get; } = new("kits", "kit", Kit.Parser, (k, name, revision, time) =>
    {
        k.Name = name;
        k.Revision = revision;
        k.UpdateTime = time;
    });

    public static ResourceKind<Scene> Scenes { get; } = new("scenes", "scene", Scene.Parser, (s, name, revision, time) =>
    {
        s.Name = name;
        s.Revision = revision;
        s.UpdateTime = time;
    });

    // A plan's own time is when it was made; that stays.
    public static ResourceKind<Plan> Plans { get; } = new("plans", "plan", Plan.Parser, (p, name, revision, _) =>
    {
        p.Name = name;
        p.Revision = revision;
    });

    // One a team.
    public static ResourceKind<TeamSettings> TeamSettings { get; } = new("teamSettings", "settings", V1.TeamSettings.Parser, (s, name, revision, time) =>
    {
        s.Name = name;
        s.Revision = revision;
        s.UpdateTime = time;
    });

    // One a team. What is in force follows from it and is not kept.
    public static ResourceKind<ClipSettings> ClipSettings { get; } = new("clipSettings", "settings", V1.ClipSettings.Parser, (s, name, revision, time) =>
    {
        s.Name = name;
        s.Revision = revision;
        s.UpdateTime = time;
    });
}
