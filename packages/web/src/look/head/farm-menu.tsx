import { useNavigate } from '@tanstack/react-router';
import { Button, Menu, MenuItem, MenuTrigger, Popover } from 'react-aria-components';
import { words } from '../../words.ts';

/** The farm's name opens what belongs to the farm as a whole: its settings, and another farm. */
export function FarmMenu({ farmName }: { readonly farmName: string | null }) {
  const navigate = useNavigate();
  return (
    <MenuTrigger>
      <Button className="farm-door">{farmName ?? words.farm.none}</Button>
      <Popover placement="bottom end" offset={6}>
        <Menu
          className="farm-menu"
          aria-label={words.farm.menu}
          onAction={(key) => navigate({ to: key === 'settings' || key === 'people' ? `/${key}` : '/start' })}
        >
          <MenuItem className="farm-menu-item" id="settings">
            {words.places.settings}
          </MenuItem>
          <MenuItem className="farm-menu-item" id="people">
            {words.places.people}
          </MenuItem>
          <MenuItem className="farm-menu-item" id="start">
            {words.farm.another}
          </MenuItem>
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}
