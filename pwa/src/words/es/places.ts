// Nombres en español de las aberturas y los cuartos de nuestros edificios, por su
// id. Un id sin nombre aquí se dice por sus palabras.
export const places: Readonly<Record<string, string>> = {
  attic: 'Ático',
  back_bedroom: 'Dormitorio trasero',
  back_bedroom_door: 'Puerta del dormitorio trasero',
  back_door: 'Puerta trasera',
  bedroom: 'Dormitorio',
  bedroom_door: 'Puerta del dormitorio',
  bedroom_window: 'Ventana del dormitorio',
  bravo_gable_vent: 'Rejilla del hastial Bravo',
  ceiling_hatch: 'Trampilla del cielo raso',
  ceiling_space: 'Espacio sobre el cielo raso',
  corridor: 'Pasillo',
  corridor_window: 'Ventana del pasillo',
  delta_gable_vent: 'Rejilla del hastial Delta',
  delta_vent: 'Rejilla Delta',
  door: 'Puerta',
  door_lower: 'Puerta interior baja',
  door_upper: 'Puerta interior alta',
  east: 'Este',
  east_door: 'Puerta este',
  east_window: 'Ventana este',
  entrance_door: 'Puerta de entrada',
  flat_door: 'Puerta del apartamento',
  floor_hole: 'Abertura del suelo',
  front_bedroom: 'Dormitorio delantero',
  front_bedroom_door: 'Puerta del dormitorio delantero',
  front_bedroom_window: 'Ventana del dormitorio delantero',
  front_door: 'Puerta principal',
  gap: 'Rendija',
  gate: 'Puerta grande',
  hall: 'Vestíbulo',
  high_window: 'Ventana alta',
  inner_door: 'Puerta interior',
  kitchen: 'Cocina',
  kitchen_door: 'Puerta de la cocina',
  kitchen_window: 'Ventana de la cocina',
  landing: 'Descansillo',
  landing_window: 'Ventana del descansillo',
  living_room: 'Sala de estar',
  living_room_door: 'Puerta de la sala de estar',
  living_room_side_window: 'Ventana lateral de la sala de estar',
  living_room_window: 'Ventana de la sala de estar',
  lounge: 'Sala',
  lounge_door: 'Puerta de la sala',
  lounge_window: 'Ventana de la sala',
  lower_left: 'Celda baja izquierda',
  lower_right: 'Celda baja derecha',
  middle: 'Centro',
  middle_window: 'Ventana central',
  office: 'Oficina',
  office_door: 'Puerta de la oficina',
  office_window: 'Ventana de la oficina',
  outside: 'Exterior',
  port_high: 'Boca alta',
  port_low: 'Boca baja',
  port_lower_left: 'Boca baja izquierda',
  port_lower_right: 'Boca baja derecha',
  port_upper_left: 'Boca alta izquierda',
  port_upper_right: 'Boca alta derecha',
  rear_bedroom: 'Dormitorio del fondo',
  rear_bedroom_door: 'Puerta del dormitorio del fondo',
  rear_bedroom_window: 'Ventana del dormitorio del fondo',
  roller_door: 'Persiana enrollable',
  roof_hatch: 'Trampilla del techo',
  roof_opening: 'Abertura del techo',
  roof_vent_left: 'Salida de techo izquierda',
  roof_vent_right: 'Salida de techo derecha',
  room: 'Cuarto',
  shop: 'Tienda',
  shop_door: 'Puerta de la tienda',
  shop_window: 'Ventana de la tienda',
  side_door: 'Puerta lateral',
  stair: 'Escalera',
  stair_door: 'Puerta de la escalera',
  stair_hatch: 'Trampilla de la escalera',
  stair_vent: 'Rejilla de la escalera',
  stair_window: 'Ventana de la escalera',
  stairwell: 'Caja de escalera',
  upper_bedroom: 'Dormitorio de arriba',
  upper_bedroom_door: 'Puerta del dormitorio de arriba',
  upper_bedroom_window: 'Ventana del dormitorio de arriba',
  upper_corridor: 'Pasillo de arriba',
  upper_corridor_window: 'Ventana del pasillo de arriba',
  upper_flat_door: 'Puerta del apartamento de arriba',
  upper_left: 'Celda alta izquierda',
  upper_living_room: 'Sala de estar de arriba',
  upper_living_room_window: 'Ventana de la sala de estar de arriba',
  upper_right: 'Celda alta derecha',
  upper_stair_door: 'Puerta de la escalera de arriba',
  void: 'Hueco bajo el techo',
  west: 'Oeste',
  west_door: 'Puerta oeste',
  west_window: 'Ventana oeste',
  window: 'Ventana',
  workshop: 'Taller',
  workshop_door: 'Puerta del taller',
}

const sides: Readonly<Record<string, string>> = { alpha: 'Alfa', bravo: 'Bravo', charlie: 'Charlie', delta: 'Delta' }
const kinds: Readonly<Record<string, string>> = { door: 'Puerta', window: 'Ventana', vent: 'Rejilla', crack: 'Rendija' }
const drawn = /^(alpha|bravo|charlie|delta)_([a-z]+?)(?:_division_(\d+))?(?:_(\d+))?$/

/** El nombre de un id: el de la lista, o el de una abertura dibujada ("bravo_window_division_2_3"). */
export function place(id: string): string | undefined {
  if (places[id] !== undefined) return places[id]
  const numbered = /^roof_opening_(\d+)$/.exec(id)
  if (numbered) return `${places.roof_opening} ${numbered[1]}`
  const [, side = '', kind = '', division, n] = drawn.exec(id) ?? []
  if (!kinds[kind]) return undefined
  return [`${kinds[kind]} ${sides[side]}`, division && `división ${division}`, n].filter(Boolean).join(' ')
}

/** La abertura dentro de una frase: todas las de la lista son femeninas. */
export function thePlace(id: string): string {
  const named = place(id) ?? `abertura ${id.replaceAll('_', ' ')}`
  return `la ${named.charAt(0).toLowerCase()}${named.slice(1)}`
}
